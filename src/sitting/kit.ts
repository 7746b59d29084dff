/** A reader's own kit as it is kept and saved: lenses, format, room and backdrop, each value in evaluate's text. */

/** One lens; a zoom is several of them, one for each length that is used. */
export interface Lens {
  readonly 'focal-length': string;
  /** Its widest aperture there. */
  readonly 'f-number'?: string;
}

/** Lengths of the studio, by the ids of the inputs they begin. */
export const LENGTHS = ['room-length', 'room-width', 'ceiling', 'backdrop-width', 'backdrop-height'] as const; // prettier-ignore
export type LengthId = (typeof LENGTHS)[number];

/** Apertures a plate is set to by hand; a meter's readings are not among them. */
export const APERTURES = ['f-number', 'wanted-f-number'] as const;

/** Every input a kit may begin. */
export const BEGINS: readonly string[] = ['format', 'focal-length', ...APERTURES, ...LENGTHS];

export interface Kit extends Readonly<Partial<Record<LengthId, string>>> {
  readonly format?: string;
  readonly lenses: readonly Lens[];
  readonly system?: 'metric' | 'imperial';
}

/** More lenses than any bag holds. */
export const MOST_LENSES = 24;

const NUMBER = String.raw`\d{1,20}(?:\.\d{1,20})?(?:e[+-]?\d{1,2})?`;
const MILLIMETRES = new RegExp(`^${NUMBER} mm$`);
const METRES = new RegExp(`^${NUMBER} m$`);
const APERTURE = new RegExp(`^f/${NUMBER}$`);
const FORMAT = /^[0-9a-z.]{1,48}$/;

const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);
const fits = (raw: unknown, form: RegExp): raw is string =>
  typeof raw === 'string' && form.test(raw);

const lensOf = (raw: unknown): Lens | undefined => {
  if (!isRecord(raw)) return undefined;
  const { 'focal-length': focal, 'f-number': widest } = raw;
  if (!fits(focal, MILLIMETRES)) return undefined;
  if (widest === undefined) return { 'focal-length': focal };
  return fits(widest, APERTURE) ? { 'focal-length': focal, 'f-number': widest } : undefined;
};

/**
 * A kit, if something from outside is one.
 *
 * Model: of what is known every value must have its form; what is not known is left behind. Whether a value is any use
 * to a formula is for the formula to say.
 * @returns undefined where any value has another form, or where nothing of a kit is in it
 * @example kitOf({ lenses: [{ 'focal-length': '56 mm', 'f-number': 'f/1.2' }] })
 */
export const kitOf = (raw: unknown): Kit | undefined => {
  if (!isRecord(raw)) return undefined;
  const { format, lenses = [], system } = raw;
  if (format !== undefined && !fits(format, FORMAT)) return undefined;
  if (system !== undefined && system !== 'metric' && system !== 'imperial') return undefined;
  if (!Array.isArray(lenses) || lenses.length > MOST_LENSES) return undefined;
  const bag = lenses.map(lensOf).filter((lens) => lens !== undefined);
  const lengths = LENGTHS.flatMap((id) => (raw[id] === undefined ? [] : [[id, raw[id]] as const]));
  if (bag.length < lenses.length || !lengths.every(([, text]) => fits(text, METRES)))
    return undefined;
  const kit: Kit = {
    ...(format !== undefined && { format }),
    lenses: bag,
    ...Object.fromEntries(lengths),
    ...(system !== undefined && { system }),
  };
  return bag.length > 0 || Object.keys(kit).length > 1 ? kit : undefined;
};
