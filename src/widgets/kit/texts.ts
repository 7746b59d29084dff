import { InputError } from '../../formula/errors.ts';
import type { Mark } from '../../formula/notation/number.ts';
import { canonical, writeQuantity } from '../../formula/notation/write.ts';
import { readInput, writeInput } from '../../formula/read.ts';
import type { QuantityInput } from '../../formula/record.ts';
import { factorOf, type Unit } from '../../formula/units.ts';
import { format } from '../../optics/lens/frame.ts';
import { LENGTHS, type Kit, type LengthId } from '../../sitting/kit.ts';

export type System = 'metric' | 'imperial';

/** What stands in the fields of the page, as typed. */
export interface KitTexts {
  /** An id, or a size written out; empty where there is none. */
  readonly format: string;
  readonly lenses: readonly { readonly focal: string; readonly widest: string }[];
  readonly lengths: Readonly<Record<LengthId, string>>;
  readonly system: System | '';
}

/** What was made of them; a field is known by its id, a lens's by its place: `lens-0-focal`. */
export interface KitRead {
  /** The kit, where nothing is wrong and anything is given. */
  readonly kit: Kit | undefined;
  /** What could be read, field by field, in evaluate's text. */
  readonly values: ReadonlyMap<string, string>;
  readonly troubles: ReadonlyMap<string, string>;
  /** “read as 4.191 m”, where that is not what stands there. */
  readonly echoes: ReadonlyMap<string, string>;
}

const length = (name: string, start: number, low: number): QuantityInput => ({
  name,
  tex: '',
  unit: 'm',
  range: [low, 100],
  start,
  means: '',
});

/** What a length may be: narrow enough for every calculator that has one of its name. */
export const lengths: Readonly<Record<LengthId, QuantityInput>> = {
  'room-length': length('room length', 5, 0.5),
  'room-width': length('room width', 3.6, 0.5),
  ceiling: length('ceiling', 2.6, 0.5),
  'backdrop-width': length('backdrop width', 2.7, 0.1),
  'backdrop-height': length('backdrop height', 2.4, 0.1),
};
const focal: QuantityInput = { ...length('focal length', 85, 1), unit: 'mm', range: [1, 5000] };
const widest: QuantityInput = {
  ...length('widest aperture', 1.8, 0.5),
  unit: 'f/',
  range: [0.5, 256],
};

export const unitOf = (system: System | ''): Unit => (system === 'imperial' ? 'ft' : 'm');

/** A length as its field shows it, and a lens's numbers likewise. */
export const fieldText = (stored: string, unit: Unit, decimal: Mark): string => {
  const [number = ''] = stored.replace('f/', '').split(' ');
  const from = unit === 'mm' || unit === 'f/' ? 1 : 1 / factorOf(unit);
  const x = Number((Number(number) * from).toPrecision(6));
  const text = String(unit === 'ft' ? Number(x.toFixed(3)) : x);
  return decimal === 'comma' ? text.replace('.', ',') : text;
};

/**
 * Reads what stands in the fields. Each is read by itself, so that every one that is wrong says so.
 * Throws: nothing that comes of the texts.
 */
export const readKit = (texts: KitTexts): KitRead => {
  const values = new Map<string, string>();
  const troubles = new Map<string, string>();
  const echoes = new Map<string, string>();
  const read = (at: string, input: QuantityInput, text: string, unit: Unit): string | undefined => {
    if (text.trim() === '') return undefined;
    try {
      const value = readInput(input, text, { unit }) as number;
      const plain = text
        .replaceAll(/\s/g, '')
        .replace(',', '.')
        .replace(/^f\//i, '')
        .replace(new RegExp(`${unit}$`), '');
      const said = writeQuantity(value, unit, { significant: 6 }, { exact: true });
      if (Number(plain) !== Number.parseFloat(said.replace('f/', '')))
        echoes.set(at, `read as ${said}`);
      const stored = canonical(value, input.unit);
      values.set(at, stored);
      return stored;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      troubles.set(at, error.message);
      return undefined;
    }
  };

  let frame: string | undefined;
  if (texts.format.trim() !== '')
    try {
      frame = writeInput(format, readInput(format, texts.format));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      troubles.set(
        'format',
        `“${texts.format.slice(0, 40)}” is no size of a frame. Write both sides and their unit, such as 30x20mm.`,
      );
    }

  const lenses = texts.lenses.flatMap((row, i) => {
    const long = read(`lens-${i}-focal`, focal, row.focal, 'mm');
    const wide = read(`lens-${i}-widest`, widest, row.widest, 'f/');
    if (long === undefined && row.focal.trim() === '' && row.widest.trim() !== '')
      troubles.set(
        `lens-${i}-focal`,
        'Which lens opens so wide? Give its focal length, such as 85.',
      );
    return long === undefined
      ? []
      : [{ 'focal-length': long, ...(wide !== undefined && { 'f-number': wide }) }];
  });
  const rooms = LENGTHS.flatMap((id) => {
    const text = read(id, lengths[id], texts.lengths[id], unitOf(texts.system));
    return text === undefined ? [] : [[id, text] as const];
  });

  if (troubles.size > 0) return { kit: undefined, values, troubles, echoes };
  const any = frame !== undefined || lenses.length > 0 || rooms.length > 0 || texts.system !== '';
  const kit: Kit = {
    ...(frame !== undefined && { format: frame }),
    lenses: lenses.sort(
      (a, b) => Number.parseFloat(a['focal-length']) - Number.parseFloat(b['focal-length']),
    ),
    ...Object.fromEntries(rooms),
    ...(texts.system !== '' && { system: texts.system }),
  };
  return { kit: any ? kit : undefined, values, troubles, echoes };
};

/** The fields of a kit that is kept. */
export const textsOf = (kit: Kit, decimal: Mark): KitTexts => ({
  format: kit.format ?? '',
  lenses: kit.lenses.map((lens) => ({
    focal: fieldText(lens['focal-length'], 'mm', decimal),
    widest: lens['f-number'] === undefined ? '' : fieldText(lens['f-number'], 'f/', decimal),
  })),
  lengths: Object.fromEntries(
    LENGTHS.map((id) => {
      const text = kit[id];
      return [id, text === undefined ? '' : fieldText(text, unitOf(kit.system ?? ''), decimal)];
    }),
  ) as Record<LengthId, string>,
  system: kit.system ?? '',
});
