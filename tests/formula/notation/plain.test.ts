import { describe, expect, it } from 'vitest';
import { plain } from '../../../src/formula/notation/plain.ts';

describe('plain text', () => {
  it('has ASCII digits for Arabic-Indic, Eastern Arabic-Indic and full-width ones', () => {
    expect(plain('٠١٢٣٤٥٦٧٨٩')).toBe('0123456789');
    expect(plain('۰۱۲۳۴۵۶۷۸۹')).toBe('0123456789');
    expect(plain('０１２３４５６７８９')).toBe('0123456789');
  });

  it('has ASCII for every full-width form, from ！ to ～, and leaves what follows them', () => {
    // Unicode sets U+FF01 to U+FF5E in the order of ASCII 21 to 7E; half-width katakana come after.
    for (let code = 0x21; code <= 0x7e; code++)
      expect(plain(String.fromCodePoint(0xff01 + code - 0x21))).toBe(String.fromCodePoint(code));
    expect(plain('～｟ｱ')).toBe('~｟ｱ');
  });

  it('leaves the characters on either side of a block of digits', () => {
    expect(plain('\u065f\u066a\u06ef\u06fa')).toBe('\u065f\u066a\u06ef\u06fa');
  });

  it('has one space for any number and kind of them, and none at its ends', () => {
    expect(plain(' 6\u00a0\u202f ft\t  2 in ')).toBe('6 ft 2 in');
  });

  it('takes 64 characters and refuses 65', () => {
    expect(plain('7'.repeat(64))).toBe('7'.repeat(64));
    expect(() => plain('7'.repeat(65))).toThrow(/too long/);
  });
});
