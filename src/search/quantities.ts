/** What a number in a question can be a number of, as far as its unit says. */
export type Measure =
  | 'f-number' | 'iso' | 'time' | 'length' | 'illuminance' | 'temperature' | 'reciprocal-temperature'
  | 'stops' | 'angle' | 'energy' | 'mass' | 'power' | 'current' | 'voltage' | 'pixels' | 'ratio' | 'luminance' | 'ev' | 'resolution' | 'force'; // prettier-ignore

/** A quantity somebody typed among words. */
export interface Typed {
  readonly text: string;
  readonly measure: Measure;
  /** The words right before it, which may say what it is. */
  readonly before: string;
}

export interface Parts {
  /** What was asked in words. */
  readonly words: string;
  readonly typed: readonly Typed[];
  /** What the quantities are called, for a question that is nothing else. */
  readonly names: string;
}

const N = String.raw`(?:\d+ )?\d+(?:[.,]\d+)*(?:\/\d+(?:[.,]\d+)?)?`;
const LENGTH = String.raw`mm|cm|km|m|metres?|meters?|in|inch|inches|ft|foot|feet|"|″|'|′`;
/** Forms by what they measure, the longer before the shorter. */
const FORMS: readonly (readonly [Measure, string, string])[] = [
  ['f-number', String.raw`f ?[/:]? ?\d+(?:[.,]\d+)?`, 'f-number'],
  ['iso', String.raw`iso ?\d+`, 'iso'],
  ['ev', String.raw`ev ?-?\d+(?:[.,]\d+)?(?![\d.,]* ?mm)|-?\d+(?:[.,]\d+)? ?ev`, 'exposure value'],
  ['resolution', String.raw`\d+ ?(?:ppi|dpi|px\/in|px\/cm)`, 'print resolution'],
  ['luminance', String.raw`${N} ?cd\/m[2²]`, 'luminance'],
  ['reciprocal-temperature', String.raw`[-+]?${N} ?mireds?`, 'mired'],
  ['length', String.raw`${N} ?(?:ft|feet|foot|'|′) ?\d+(?: \d+\/\d+)? ?(?:in|inches|inch|"|″)?`, ''],
  ['length', String.raw`${N} ?(?:${LENGTH})`, ''],
  ['illuminance', String.raw`${N} ?(?:lx|lux)`, 'illuminance'],
  ['temperature', String.raw`\d{4,5} ?(?:k|kelvin)`, 'colour temperature'],
  ['stops', String.raw`[-+]?${N} ?stops?`, 'stop'],
  ['angle', String.raw`[-+]?${N} ?(?:°|deg|degrees?)`, 'angle'],
  ['time', String.raw`1\/\d+(?:[.,]\d+)? ?(?:s|sec|secs|seconds?)?|${N} ?(?:s|sec|secs|seconds?)`, 'shutter time'],
  ['energy', String.raw`${N} ?(?:j|ws|joules?)`, 'joule'],
  ['mass', String.raw`${N} ?(?:kg|g)`, 'ballast'],
  ['power', String.raw`${N} ?(?:w|kw|watts?)`, 'mains load'],
  ['current', String.raw`${N} ?(?:a|amps?)`, 'mains load'],
  ['voltage', String.raw`${N} ?(?:v|volts?)`, 'mains load'],
  ['pixels', String.raw`\d+ ?(?:px|pixels?)`, 'pixels'],
  ['ratio', String.raw`${N} ?%`, ''],
]; // prettier-ignore

const ANY = new RegExp(
  `(?<![\\p{L}\\p{N}.,/])(?:${FORMS.map(([, form]) => `(${form})`).join('|')})(?![\\p{L}\\p{N}²])`,
  'giu',
);

/** Both sides of a picture with one unit; a film of 4x5in is a name. */
const SIDES = /(?<![\d.,x])(?!4x5in)(\d+(?:[.,]\d+)?) ?[x×] ?(\d+(?:[.,]\d+)?) ?(cm|m|in|ft)\b/gi;

/**
 * Parts a question into its words and the quantities among them. Nothing is converted here.
 * @example partQuery('85mm f4 2.2 m depth of field').words // 'depth of field'
 */
export const partQuery = (text: string): Parts => {
  const typed: Typed[] = [];
  const names: string[] = [];
  const words = text
    .replace(SIDES, '$1 $3 $2 $3')
    .replace(ANY, (all: string, ...rest: unknown[]) => {
      const form = rest.slice(0, FORMS.length).findIndex((one) => one !== undefined);
      const [measure = 'length', , name = ''] = FORMS[form] ?? [];
      const at = rest.findIndex((one, i) => i >= FORMS.length && typeof one === 'number');
      const before = (rest[at + 1] as string).slice(0, rest[at] as number).trim();
      typed.push({ text: all.trim(), measure, before });
      names.push(name || (/mm$/i.test(all) ? 'focal length' : all.endsWith('%') ? '' : 'working distance'));
      // A percentage may be part of a name: 18 % grey.
      return measure === 'ratio' ? all : ' ; ';
    })
    .replace(/[;\s]+/g, ' ')
    .trim(); // prettier-ignore
  return { words, typed, names: [...new Set(names)].join(' ') };
};
