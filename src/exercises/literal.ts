import { writeQuantity, type Style } from '../formula/notation/write.ts';
import { factorOf } from '../formula/units.ts';

/** A length in metres or centimetres among words; sizes such as 40 × 50 cm are names, and stay. */
const LENGTH = /(?<![\d.×/−-]|× )(\d+(?:\.\d+)?) (m|cm)(?![\p{L}\d²³/])/gu;

/**
 * A text with the numbers an author wrote out, as this reader writes them: a brief that mixes feet with metres is read
 * wrong. Numbers that are drawn or worked out stand in {braces}, and are written where they are filled in.
 * @example inReadersStyle('0.10 m of margin', { system: 'imperial' }) // '3⅞″ of margin'
 */
export const inReadersStyle = (text: string, style: Style): string => {
  const lengths =
    style.system === 'imperial'
      ? text.replaceAll(LENGTH, (_all, number: string, unit: 'm' | 'cm') =>
          writeQuantity(Number(number) * factorOf(unit), 'ft', { significant: 2 }, style),
        )
      : text;
  return style.decimal === 'comma' ? lengths.replaceAll(/(?<=\d)\.(?=\d)/g, ',') : lengths;
};
