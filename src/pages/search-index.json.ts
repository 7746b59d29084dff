import type { APIRoute } from 'astro';
import { buildIndex } from '../search/index.ts';
import { searchGroups, searchSources, type Says } from '../site/search-sources.ts';
import type { Calculator } from '../widgets/parts/calculator.ts';
import { PlateState } from '../widgets/parts/plate-state.ts';
import { signsOf } from '../widgets/parts/symbol.ts';

const calculators = import.meta.glob<Calculator>(
  ['../widgets/*/calculator.ts', '!../widgets/parts/calculator.ts'],
  { eager: true, import: 'default' },
);

const says: Says = {
  sentence({ id }) {
    const calculator = calculators[`../widgets/${id}/calculator.ts`];
    if (!calculator) throw new Error(`The formula ${id} has no calculator to say its sentence.`);
    return new PlateState(calculator)
      .sentence()
      .map(({ text }) => text)
      .join('');
  },
  letters(tex) {
    // A sign alone, such as ′, is no symbol anyone would type.
    if (!/[A-Za-z]/.test(tex)) return [];
    // A name of two letters, such as EV, is one symbol.
    const name = /^\\mathrm\{(\w+)\}$/.exec(tex)?.[1];
    if (name !== undefined) return [name];
    return signsOf(tex)
      .filter(({ kind }) => kind === 'letter')
      .map(({ text, sub, prime }) => text + (prime ? '′' : '') + (sub ? `_${sub}` : ''));
  },
};

/** What search reads: made from everything the site says, once, when it is built. */
export const GET: APIRoute = async () =>
  new Response(JSON.stringify(buildIndex(await searchSources(says), await searchGroups(says))), {
    headers: { 'content-type': 'application/json' },
  });
