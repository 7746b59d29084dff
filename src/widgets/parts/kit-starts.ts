import { compute } from '../../formula/compute.ts';
import { InputError } from '../../formula/errors.ts';
import { complete, readInput, writeInput } from '../../formula/read.ts';
import { idOf, type Formula, type Given, type Input } from '../../formula/record.ts';
import { startsOf } from '../../formula/starts.ts';
import { APERTURES, LENGTHS, type Kit } from '../../sitting/kit.ts';
import { focalLength } from '../../optics/lens/inputs.ts';
import { inWords, onlyInPlay } from './starts.ts';

/** Where a plate begins for the owner of a kit. */
export interface KitStarts {
  /** By record key: the record's starts, with the kit's values in their places. */
  readonly starts: Given;
  /** Record keys of what the kit set, in the record's order. */
  readonly took: readonly string[];
  /** What of the kit gave way to the plate's own start, and why. */
  readonly gaveWay: string;
}

/** An owned lens, in metres and f-number. */
interface Owned {
  readonly focal: number;
  readonly widest: number;
}

const number = (text: string): number => Number.parseFloat(text.replace('f/', ''));

/** The owned lens nearest to a focal length, by the ratio of the two; of equal ones the faster. */
const nearest = ({ lenses }: Kit, millimetres: number): Owned | undefined => {
  const away = (focal: number): number => Math.abs(Math.log(focal / millimetres));
  return lenses
    .map((lens) => ({
      focal: number(lens['focal-length']),
      widest: number(lens['f-number'] ?? 'f/0'),
    }))
    .sort((a, b) => away(a.focal) - away(b.focal) || a.widest - b.widest)[0];
};

/**
 * The text a kit has for an input, or undefined where it has none.
 *
 * Model: of the lenses the one nearest to the plate's own focal length, which is that length itself where it is owned;
 * of f-numbers the plate's own, unless that lens does not open so wide.
 */
const textFor = (kit: Kit, input: Input): string | undefined => {
  const id = idOf(input);
  if (id === 'format') return kit.format;
  if (LENGTHS.some((one) => one === id)) return kit[id as (typeof LENGTHS)[number]];
  if (!('start' in input) || typeof input.start !== 'number') return undefined;
  if (id === 'focal-length') {
    const lens = nearest(kit, input.start);
    return lens && `${lens.focal} mm`;
  }
  const lens = nearest(kit, focalLength.start);
  return APERTURES.some((one) => one === id) && lens && lens.widest > input.start
    ? `f/${lens.widest}`
    : undefined;
};

/**
 * What a plate starts from for the owner of a kit.
 *
 * Model: the record's starts, and in their place what the kit has for them; an input the page begins without stays
 * empty. Where a plate translates into the kit’s own format, it translates into the harbour set’s instead. A value the
 * record refuses gives way to the start, and so does the whole kit where the set cannot be computed.
 * @example startsWith(framingDistance, kit).took // ['format', 'f']
 */
export const startsWith = (formula: Formula, kit: Kit): KitStarts => {
  const own = startsOf(formula);
  const starts = { ...own };
  const took: string[] = [];
  const gaveWay: string[] = [];
  for (const [key, input] of Object.entries(formula.inputs)) {
    const text = own[key] === undefined ? undefined : textFor(kit, input);
    if (text === undefined) continue;
    try {
      starts[key] = readInput(input, text, { stored: true });
      took.push(key);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      gaveWay.push(
        `Your kit’s ${input.name} cannot be used here, and the plate’s own stands there.`,
      );
    }
  }
  // A format compared with itself says nothing: the harbour set's stands in for one of the two.
  const [one, other] = ['format', 'to-format'].map((id) =>
    Object.keys(formula.inputs).find((key) => idOf(formula.inputs[key] as Input) === id),
  );
  if (
    one &&
    other &&
    writeInput(formula.inputs[one] as Input, starts[one]) ===
      writeInput(formula.inputs[other] as Input, starts[other])
  )
    starts[other] = own[one];
  try {
    compute(formula, complete(formula, onlyInPlay(formula, starts)));
    return { starts, took, gaveWay: gaveWay.join(' ') };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {
      starts: own,
      took: [],
      gaveWay: `Your kit’s numbers do not go with this plate’s others: ${inWords(formula, error)} It shows its own start.`,
    };
  }
};
