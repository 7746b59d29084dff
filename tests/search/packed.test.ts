import MiniSearch from 'minisearch';
import { expect, it } from 'vitest';
import { pack, unpack } from '../../src/search/packed.ts';

const fields = ['title', 'text'];
const options = {
  fields,
  tokenize: (text: string) => (text === '' ? [] : text.split(' ')),
  processTerm: (term: string) => term,
};
const documents = [
  { id: 0, title: 'lens hood', text: 'light from aside' },
  { id: 1, title: 'aside', text: '' },
  { id: 2, title: 'lens', text: 'hood light' },
];
const whole = new MiniSearch(options);
whole.addAll(documents);

it('reads back what was written, what is shown left out or not', () => {
  const terms = (text: string) => (text === '' ? [] : text.split(' '));
  const nothing = documents.map(() => []);
  const titles = documents.map(({ title }) => [[0, terms(title)] as const]);
  for (const shown of [nothing, titles]) {
    const { words, terms: known } = unpack(pack(whole.toJSON(), shown), shown, fields);
    const again = MiniSearch.loadJS(words, options);
    for (const asked of ['lens', 'hood', 'light', 'aside', 'from lens'])
      expect(again.search(asked)).toEqual(whole.search(asked));
    expect([...known].toSorted()).toEqual(['aside', 'from', 'hood', 'lens', 'light']);
  }
  const sent = [nothing, titles].map((shown) => pack(whole.toJSON(), shown).length);
  expect(sent[1]).toBeLessThan(sent[0] ?? 0);
});
