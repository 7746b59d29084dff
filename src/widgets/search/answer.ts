import { spelt } from '../../formula/notation/spelt.ts';
import { markOf } from '../../formula/notation/number.ts';
import { isChoice } from '../../formula/record.ts';
import { formulas } from '../../formulas.ts';
import { assign, type Assigned } from '../../search/assign.ts';
import type { Parts } from '../../search/quantities.ts';
import { sayInput } from '../../formula/show.ts';
import type { Sentence } from '../parts/calculator.ts';
import { PlateState } from '../parts/plate-state.ts';

/** A plate’s answer to the numbers in a question. */
export interface Answer {
  readonly address: string;
  /** The plate’s sentence with these numbers, or why there is none. */
  readonly says: string;
  readonly refused: boolean;
  /** Which of the numbers are in it, and which are not. */
  readonly with: string;
}

const sentences = import.meta.glob<Sentence>('../*/sentence.ts', {
  import: 'sentence',
  query: '?answer',
});

const idIn = (address: string): string => /^\/plates\/([^/]+)\/$/.exec(address)?.[1] ?? '';

const listed = (items: readonly string[]): string => items.join(', ');

/** Sets a plate to what was typed, and lets it say its sentence. */
const answerOf = async (
  address: string,
  { values, left, refusal }: Assigned,
  parts: Parts,
): Promise<Answer | undefined> => {
  const id = idIn(address);
  const [record, sentence] = await Promise.all([
    formulas[id]?.(),
    sentences[`../${id}/sentence.ts`]?.(),
  ]);
  if (!record || !sentence) return undefined;
  const formula = record.default;
  const state = new PlateState({
    formula,
    sentence,
    fields: [],
    more: [],
    draw: () => {
      throw new Error('An answer has no drawing.');
    },
  });
  if (parts.typed.some(({ text }) => /(?:ft|feet|foot|in|inch|inches|['"′″])$/i.test(text)))
    state.measure('imperial');
  const mark = parts.typed.map(({ text }) => markOf(text)).find(Boolean);
  if (mark) state.style = { ...state.style, decimal: mark };
  for (const [key, value] of values) state.put(key, value);
  const said = values.map(([key, value]) => {
    const input = formula.inputs[key];
    if (!input) return '';
    const text = sayInput(input, value, state.style);
    return isChoice(input) || text.startsWith('f/') || text.startsWith('ISO')
      ? text
      : `${spelt(input)} ${text}`;
  });
  const without = left.length > 0 ? ` Not used: ${listed(left)}.` : '';
  const troubles = [
    refusal,
    state.trouble?.message,
    ...Object.keys(formula.inputs).map((key) => state.field(key).trouble?.message),
  ].filter(Boolean);
  if (troubles.length > 0)
    return { address, says: troubles[0] ?? '', refused: true, with: without.trim() };
  return {
    address: `${address}?${state.query()}`,
    says: state
      .sentence()
      .map(({ text }) => text)
      .join(''),
    refused: false,
    with: `With ${listed(said)}; the rest as the plate starts.${without}`,
  };
};

/**
 * The answer of the plate that fits a question best: of those found, the first that can take all of its numbers, else the
 * one that takes most. Undefined where none takes any.
 */
export const answer = async (
  addresses: readonly string[],
  parts: Parts,
): Promise<{ readonly plate: string; readonly answer: Answer } | undefined> => {
  let best: { readonly address: string; readonly assigned: Assigned } | undefined;
  for (const address of addresses) {
    const record = await formulas[idIn(address)]?.();
    if (!record) continue;
    const assigned = assign(record.default, parts.words, parts.typed);
    const taken = parts.typed.length - assigned.left.length;
    if (taken === 0 && assigned.values.length === 0 && assigned.refusal === undefined) continue;
    if (!best || assigned.left.length < best.assigned.left.length) best = { address, assigned };
    if (assigned.left.length === 0) break;
  }
  if (!best) return undefined;
  const found = await answerOf(best.address, best.assigned, parts);
  return found && { plate: best.address, answer: found };
};
