import { InputError } from '../errors.ts';

const CODE = /^([a-z]{3}) ?(?=[-+\d.])|(?<=\d) ?([a-z]{3})$/i;
const known = new Set(Intl.supportedValuesOf('currency'));

/** Three capital letters of ISO 4217, or undefined where the text is none of its codes. */
export const currencyCode = (text: string): string | undefined => {
  const code = text.toUpperCase();
  return known.has(code) ? code : undefined;
};

/**
 * A sum with its currency beside it, parted into number and code; undefined where no code stands there.
 * Throws: InputError for three letters that are no currency.
 * @example partMoney('480 EUR') // { number: '480', code: 'EUR' }
 */
export const partMoney = (
  text: string,
): { readonly number: string; readonly code: string } | undefined => {
  const [all, before, after] = CODE.exec(text.trim()) ?? [];
  if (all === undefined) return undefined;
  const letters = before ?? after ?? '';
  const code = currencyCode(letters);
  if (code === undefined)
    throw new InputError(
      `${letters} is no currency of ISO 4217. Write its three letters, such as EUR, or the number alone.`,
    );
  return { number: text.trim().replace(CODE, ''), code };
};

/**
 * The one currency that some texts name, or undefined where none does.
 * Throws: InputError where they name two.
 */
export const currencyOf = (texts: readonly string[]): string | undefined => {
  const codes = [...new Set(texts.flatMap((text) => partMoney(text)?.code ?? []))];
  if (codes.length > 1)
    throw new InputError(
      `Sums in ${codes.join(' and ')} cannot be reckoned together. Write them all in one currency.`,
    );
  return codes[0];
};
