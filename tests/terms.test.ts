import { describe, expect, it } from 'vitest';
import { formulas } from '../src/formulas.ts';
import { readLessons } from './support/content.ts';
import { proseOf } from './support/prose.ts';
import { ELSEWHERE, finderOf, termNames, watched } from './support/terms.ts';

const terms = termNames();

/** What of a lesson’s text uses a name before it is a <Term>, with a few words about it. */
const unexplained = (body: string, elsewhere: readonly string[] = []): string[] => {
  const prose = proseOf(body);
  return finders.flatMap(({ id, finder }) => {
    const found = elsewhere.includes(id) ? null : finder.exec(prose);
    if (!found) return [];
    const linked = body.search(new RegExp(`<Term\\s+id="${id}"`));
    if (linked >= 0 && linked < found.index) return [];
    const around = prose.slice(Math.max(0, found.index - 20), found.index + found[0].length + 20);
    return [`${id}: “…${around.replaceAll(/\s+/g, ' ')}…”`];
  });
};
const finders = terms.flatMap(({ id, names }) => {
  const looked = watched(names);
  return looked.length > 0 ? [{ id, finder: finderOf(looked) }] : [];
});

describe('a term is explained where a page first uses it', () => {
  it.each(readLessons())('in lesson $order $slug', ({ body, slug }) => {
    expect(unexplained(body, ELSEWHERE[slug])).toEqual([]);
  });

  it('or this test says which is not', () => {
    expect(unexplained('A soft\nproof first.\n')).toEqual([
      expect.stringContaining('soft-proof'),
    ]);
    expect(unexplained('Two apertures. <Term id="aperture">Aperture</Term>')).toHaveLength(1);
    expect(unexplained('<Term id="aperture">Apertures</Term>, two apertures.')).toEqual([]);
  });

  it('but not in code, maths, links, headings and names', () => {
    const quiet = '## Aperture\n\n`aperture` [the aperture](/x/) <X formula="aperture" /> $aperture$';
    expect(unexplained(quiet)).toEqual([]);
  });
});
