/** Digits with any separators, or a bare decimal part; an exponent may follow. */
export const DECIMAL = String.raw`(?:\d[\d.,٫٬]*|[.,٫]\d+)(?:[eE][+-]?\d+)?`;
/** One number as people write it: 2.5, 1/200, 1 1/3, 1e3. */
export const NUMBER = String.raw`(?:\d+ \d+/\d+|${DECIMAL}/${DECIMAL}|${DECIMAL})`;

/** The decimal mark a text used, where it used one. */
export type Mark = 'point' | 'comma';

/**
 * Reads digits with separators. Two results mean two honest readings (`3,145`: a decimal, or thousands).
 * @param stored in links, files and commands a single point is always the decimal mark
 * @returns the readings, decimal first; empty if it is no number
 */
const readDecimal = (text: string, stored: boolean): number[] => {
  const [, body = '', exponent = ''] = /^([\d.,٫٬]*)(e.*)?$/i.exec(text) ?? [];
  const value = (digits: string): number => Number(digits + exponent);
  // Arabic separators say which they are.
  if (/[٫٬]/.test(body)) return [value(body.replaceAll('٬', '').replace('٫', '.'))];
  const separators = body.replace(/\d/g, '');
  if (separators === '') return [value(body)];
  const last = separators.slice(-1);
  const groups = (mark: string): RegExp => new RegExp(`^[1-9]\\d{0,2}(\\${mark}\\d{3})+$`);
  if (separators.length === 1) {
    const decimal = value(body.replace(',', '.'));
    const thousands = groups(last).test(body) && exponent === '' && !(stored && last === '.');
    return thousands ? [decimal, value(body.replace(last, ''))] : [decimal];
  }
  const first = separators.charAt(0);
  if (first === last) return groups(first).test(body) ? [value(body.replaceAll(first, ''))] : [];
  // Both marks: the last is the decimal one and stands once, the others group in threes.
  const at = body.lastIndexOf(last);
  const [whole, decimals] = [body.slice(0, at), body.slice(at + 1)];
  return groups(first).test(whole) ? [value(`${whole.replaceAll(first, '')}.${decimals}`)] : [];
};

/** Reads one number of the NUMBER form, without sign. Same result as readDecimal; a fraction has one reading. */
export const readNumber = (text: string, stored: boolean): number[] => {
  const [, whole = '0', over = '', under = ''] = /^(?:(\d+) )?([^/]+)\/(.+)$/.exec(text) ?? [];
  if (over === '') return readDecimal(text, stored);
  const [n, d] = [readDecimal(over, true)[0], readDecimal(under, true)[0]];
  return n === undefined || d === undefined ? [] : [Number(whole) + n / d];
};

/** Which decimal mark a text shows, so that answers can keep the style that was typed. */
export const markOf = (text: string): Mark | undefined => {
  const last = /[.,](?=\d*[^.,\d]*$)/.exec(text)?.[0];
  // The same mark twice groups thousands.
  if (last === undefined || text.split(last).length !== 2) return undefined;
  return last === ',' ? 'comma' : 'point';
};
