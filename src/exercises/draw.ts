import { stream } from './random.ts';

/** What a quantity is drawn from: listed texts, or even steps from one text to another; all in evaluate's grammar. */
export type Drawn =
  | { readonly pick: readonly string[] }
  | { readonly from: string; readonly to: string; readonly step: string };

const PLAIN = /^(-?\d+)(?:\.(\d+))?(?: ?([^\d\s].*))?$/;

const known = new WeakMap<Drawn, readonly string[]>();

/**
 * Every text that can be drawn, in order. Steps are counted in the last decimal written, so that no sum of decimals
 * ever shows its binary dust.
 *
 * Throws: Error to the author where the three do not name one unit, or the end is not a whole number of steps away.
 * @example textsOf({ from: '0.6 m', to: '0.7 m', step: '0.05 m' }) // ['0.60 m', '0.65 m', '0.70 m']
 */
export const textsOf = (drawn: Drawn): readonly string[] => {
  const before = known.get(drawn);
  if (before) return before;
  const texts = 'pick' in drawn ? drawn.pick : stepped(drawn);
  known.set(drawn, texts);
  return texts;
};

const stepped = (drawn: Exclude<Drawn, { pick: readonly string[] }>): readonly string[] => {
  const parts = [drawn.from, drawn.to, drawn.step].map((text) => {
    const [, whole, decimals = '', unit = ''] = PLAIN.exec(text) ?? [];
    if (whole === undefined)
      throw new Error(`Expected a number with its unit, such as 0.6 m; found “${text}”.`);
    return { whole, decimals, unit };
  });
  const [unit = ''] = parts.map((part) => part.unit);
  if (parts.some((part) => part.unit !== unit))
    throw new Error(`Expected one unit in ${drawn.from}, ${drawn.to} and ${drawn.step}.`);
  const places = Math.max(...parts.map(({ decimals }) => decimals.length));
  const [from = 0, to = 0, step = 0] = parts.map(({ whole, decimals }) =>
    Number(whole + decimals.padEnd(places, '0')),
  );
  const steps = (to - from) / step;
  if (!(Number.isInteger(steps) && steps > 0))
    throw new Error(
      `From ${drawn.from}, ${drawn.to} is not a whole number of steps of ${drawn.step}.`,
    );
  return Array.from({ length: steps + 1 }, (_, i) => {
    const digits = String(Math.abs(from + i * step)).padStart(places + 1, '0');
    const at = digits.length - places;
    const number = places > 0 ? `${digits.slice(0, at)}.${digits.slice(at)}` : digits;
    return `${from + i * step < 0 ? '-' : ''}${number}${unit && ` ${unit}`}`;
  });
};

/** One text for every name: each from a stream of its own. */
export const drawAll = (
  vary: Readonly<Record<string, Drawn>>,
  seed: string,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(vary).map(([name, drawn]) => {
      const texts = textsOf(drawn);
      return [name, texts[stream(`${seed}/${name}`)(texts.length)] ?? ''];
    }),
  );
