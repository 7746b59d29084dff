import { InputError } from '../errors.ts';

const VULGAR = '½ 1/2 ⅓ 1/3 ⅔ 2/3 ¼ 1/4 ¾ 3/4 ⅛ 1/8 ⅜ 3/8 ⅝ 5/8 ⅞ 7/8 ⅙ 1/6 ⅚ 5/6'.split(' ');

/**
 * Brings typed text to plain characters: one minus, one space, ASCII digits, no direction marks, fractions spelled out.
 * Says nothing about what the text means.
 * Throws: InputError over 64 characters, since nobody types a longer number on purpose.
 */
export const plain = (text: string): string => {
  if (text.length > 64)
    throw new InputError('That is too long to be one value: use at most 64 characters.');
  // Most texts are plain already.
  let out = /[^ -~]/.test(text) ? '' : text;
  for (const character of (out === text ? '' : text).replace(
    /[\u061c\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g,
    '',
  )) {
    const code = character.charCodeAt(0);
    const fraction = VULGAR.indexOf(character);
    if (fraction >= 0) out += ` ${VULGAR[fraction + 1]}`;
    else if (code >= 0x660 && code <= 0x669) out += String(code - 0x660);
    else if (code >= 0x6f0 && code <= 0x6f9) out += String(code - 0x6f0);
    // Full-width forms stand at a fixed distance from ASCII.
    else if (code >= 0xff01 && code <= 0xff5e) out += String.fromCharCode(code - 0xfee0);
    else out += character;
  }
  return out
    .replace(/[\u2010-\u2015\u2212\ufe63]/g, '-')
    .replaceAll('\u2044', '/')
    .replaceAll('μ', 'µ')
    .replace(/[’ʹ]/g, "'")
    .replace(/[”“ʺ]|''|′′/g, '"')
    .replace(/\s+/g, ' ')
    .trim();
};
