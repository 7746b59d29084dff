import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { AmbiguousError, InputError } from '../../../src/formula/errors.ts';
import { parseQuantity, type QuantitySpec } from '../../../src/formula/notation/quantity.ts';
import { canonical } from '../../../src/formula/notation/write.ts';
import { UNITS, type Unit } from '../../../src/formula/units.ts';
import { expectClose } from '../../support/close.ts';

const length: QuantitySpec = { name: 'length', unit: 'm', range: [-1e4, 1e5], example: 2 };
const angle: QuantitySpec = { name: 'angle', unit: 'deg', range: [0, 180], example: 40 };
const time: QuantitySpec = { name: 'shutter', unit: 's', range: [1e-5, 1e5], example: 0.5 };
const fNumber: QuantitySpec = { name: 'f-number', unit: 'f/', range: [0.7, 128], example: 4 };
const ratio: QuantitySpec = { name: 'ratio', unit: '1', range: [-1000, 1000], example: 2 };
const stops: QuantitySpec = { name: 'loss', unit: 'stop', range: [-30, 30], example: 1 };
const iso: QuantitySpec = { name: 'iso', unit: 'ISO', range: [1, 1e6], example: 100 };
const ev: QuantitySpec = { name: 'metered EV', unit: 'EV', range: [-20, 30], example: 7 };
const torque: QuantitySpec = { name: 'torque', unit: 'N·m', range: [0, 1000], example: 5 };
const shift: QuantitySpec = { name: 'shift', unit: 'mired', range: [-1000, 1000], example: 50 };

/** What is typed, and what it means in SI. Expected numbers are written out from the definitions of the units. */
const read: readonly (readonly [QuantitySpec, string, number])[] = [
  // plain, signs and spaces
  [length, '2.5', 2.5],
  [length, '  2.5  ', 2.5],
  [length, '\u00a02.5\u202fm', 2.5],
  [length, '+5', 5],
  [length, '-2', -2],
  [length, '\u22122 m', -2],
  [length, '\u200f2.5\u200e', 2.5],
  [length, '.5', 0.5],
  [length, ',5', 0.5],
  [length, '5.', 5],
  [length, '1e3', 1000],
  [length, '1.5e-3', 0.0015],
  [length, '2E2 mm', 0.2],
  // fractions
  [length, '1/2', 0.5],
  [length, '1 1/3', 4 / 3],
  [length, '-1 1/2 m', -1.5],
  [length, '½', 0.5],
  [length, '2½ in', 0.0635],
  [length, '12 1/2 in', 0.3175],
  [length, '11/4 in', 0.06985],
  [length, '3⁄4 in', 0.01905],
  [time, '1/200', 0.005],
  [time, '1/200 s', 0.005],
  [time, '1/1.6', 0.625],
  [time, '2 min', 120],
  [time, '1 h 30 min', 5400],
  [time, '250 ms', 0.25],
  // decimal comma and grouping
  [length, '2,5', 2.5],
  [length, '0,342', 0.342],
  [length, '1.234,5 mm', 1.2345],
  [length, '1,234.5 mm', 1.2345],
  [length, '1 234,5 mm', 1.2345],
  [length, '1\u202f234 mm', 1.234],
  [length, '12 345 mm', 12.345],
  [length, '12 345 678 mm', 12345.678],
  [length, '12,345,678 mm', 12345.678],
  [length, '2.210,75 mm', 2.21075],
  [length, '300,000', 300], // as thousands it would be out of range
  [length, '3,145e2 mm', 0.3145], // nobody groups thousands before an exponent
  // digits of other scripts
  [length, '٣٫٥ m', 3.5],
  [length, '١٢٬٣٤٥ mm', 12.345],
  [length, '۲۵ cm', 0.25],
  [length, '３．５ｍ', 3.5],
  // units and their aliases
  [length, '85mm', 0.085],
  [length, '85 MM', 0.085],
  [length, '40 cm', 0.4],
  [length, '550 nm', 5.5e-7],
  [length, '4 um', 4e-6],
  [length, '4 μm', 4e-6],
  [length, '10 inches', 0.254],
  [length, '10"', 0.254],
  [length, '3 ft', 0.9144],
  [length, '6\'2"', 1.8796],
  [length, '6ft 2in', 1.8796],
  [length, '6′ 2½″', 1.8923],
  [length, "6' 2''", 1.8796],
  [length, '-1\' 6"', -0.4572],
  [length, '1 m 20 cm', 1.2],
  // in one part of several nobody means thousands
  [length, '6 ft 2,125 in', 1.882775],
  [length, '2,125 m 3 cm', 2.155],
  [angle, '40°', (40 * Math.PI) / 180],
  [angle, '28° 30′', (28.5 * Math.PI) / 180],
  [angle, '28 deg 30 arcmin', (28.5 * Math.PI) / 180],
  [angle, '0.5 rad', 0.5],
  // f-numbers, ISO, ratios, stops
  [fNumber, 'f/4', 4],
  [fNumber, 'F4', 4],
  [fNumber, 'ƒ/5,6', 5.6],
  [fNumber, '1:2.8', 2.8],
  [iso, 'ISO 400', 400],
  [iso, 'ISO400', 400],
  [iso, 'iso 400', 400],
  [iso, '12800', 12800],
  [ratio, '3:1', 3],
  [ratio, '1:7.9', 1 / 7.9],
  [ratio, '10 %', 0.1],
  [ratio, '-12.5%', -0.125],
  [stops, '+1 1/3 stops', 4 / 3],
  [stops, '−2/3', -2 / 3],
  [stops, '1.5 EV', 1.5],
  [ev, '7', 7],
  [ev, 'EV 7', 7],
  [ev, 'EV7', 7],
  [ev, 'ev -2.5', -2.5],
  [ev, 'EV +1', 1],
  [ev, '-2.5 EV', -2.5],
  [ev, '7 stops', 7],
  [ev, '1 stop', 1],
  [torque, '5 Nm', 5],
  [torque, '5 N m', 5],
  [shift, '109 mired', 109e-6],
];

const refused: readonly (readonly [QuantitySpec, string, RegExp])[] = [
  [length, '', /empty/],
  [length, '.', /not a number/],
  [length, ',', /not a number/],
  [length, '-', /not a number/],
  [length, 'NaN', /not a number/],
  [length, '1e309', /not a number that can be used/],
  [length, '1/0', /not a number that can be used/],
  [length, '1,23,4', /” is not a number\./],
  [length, '1.2.3', /” is not a number\./],
  [length, '1,234,56.7', /” is not a number\./],
  [length, '1.2.3/4', /” is not a number\./],
  [length, '4/1.2.3', /” is not a number\./],
  [length, '3:1', /unit of length/],
  [length, 'EV 5', /” is not a number\./],
  [length, '5 ,3', /has “,” where/],
  [length, '5 3', /without a unit/],
  [length, '2345 678', /without a unit/],
  [length, '1 m 3 in', /two systems/],
  [length, '2 in 1 ft', /out of order/],
  [length, '20 cm 1 m', /out of order/],
  [length, '1 m 2 m', /out of order/],
  [length, '5 3 cm', /without a unit/],
  [length, '6 ft 2', /without a unit/],
  [length, '5 kg', /unit of length/],
  [length, '5 parsec', /unit of length/],
  [length, '<script>', /not a number/],
  [length, 'infinity', /not allowed here/],
  [length, '9'.repeat(65), /too long/],
  [length, '2000 km', /between .* and .*; you typed 2000 km/],
  [angle, "28° 30'", /means feet/],
  [fNumber, '5f/4', /without a unit/],
  [iso, '4ISO 400', /without a unit/],
  [ev, '5EV 7', /without a unit/],
  [ev, '5 stopsel', /unit of ev/],
  [ev, '5 nonstops', /unit of ev/],
  [stops, '5 evening', /unit of stops/],
  [stops, '5 sev', /unit of stops/],
  [stops, '1 stop 2 stops', /units/],
  [fNumber, 'f/0', /between f\/0.7 and f\/128; you typed f\/0/],
  [time, '1/0', /not a number that can be used/],
  [time, '-1', /between/],
];

describe('what people type', () => {
  it.each(read)('reads %#: %o', (spec, text, value) => {
    expectClose(parseQuantity(text, spec), value, 1e-14);
  });

  it.each(refused)('refuses %#: %o', (spec, text, message) => {
    expect(() => parseQuantity(text, spec)).toThrow(InputError);
    expect(() => parseQuantity(text, spec)).toThrow(message);
  });

  it('takes infinity where the range has no end', () => {
    const endless = { ...length, range: [0, Infinity] } as const;
    for (const text of ['infinity', '∞', 'inf', '+∞ m', '∞m', '∞ km', 'Infinity'])
      expect(parseQuantity(text, endless)).toBe(Infinity);
    for (const text of ['5 infinity', 'infinity 5', '-infinity'])
      expect(() => parseQuantity(text, endless)).toThrow(InputError);
  });

  it.each<[QuantitySpec, string, string]>([
    [angle, '', 'Angle is empty: it must be between 0° and 180°. Try 40 deg.'],
    [angle, 'wide', 'Angle must be between 0° and 180°; “wide” is not a number. Try 40 deg.'],
    [{ ...time, range: [0, Infinity] }, '-1 s', 'Shutter must be 0 s or more; you typed -1 s.'],
    [{ ...stops, range: [-Infinity, 5] }, ' 6 ', 'Loss must be 5 stops or less; you typed 6.'],
    [
      { ...ratio, range: [-Infinity, Infinity] },
      'two',
      'Ratio must be a number; “two” is not a number. Try 2.',
    ],
    [
      length,
      'q'.repeat(41),
      `Length must be between −10\u202f000 m and 100\u202f000 m; “${'q'.repeat(40)}” is not a number. Try 2 m.`,
    ],
    [
      length,
      '9'.repeat(41),
      `Length must be between −10\u202f000 m and 100\u202f000 m; you typed ${'9'.repeat(40)}.`,
    ],
  ])('of %o, given %o, says what is allowed: %s', (spec, text, message) => {
    expect(() => parseQuantity(text, spec)).toThrow(new InputError(message));
  });

  it.each([
    ['3,145', ['3.145 m', '3145 m']],
    ['3.145', ['3.145 m', '3145 m']],
    ['10,000', ['10 m', '10000 m']],
    ['3,145 mm', ['0.003145 m', '3.145 m']],
  ])('asks about %s, which reads two ways', (text, readings) => {
    const ask = (): number => parseQuantity(text, length);
    expect(ask).toThrow(AmbiguousError);
    try {
      ask();
    } catch (error) {
      expect((error as AmbiguousError).readings).toEqual(readings);
    }
  });

  it('takes a single point as the decimal mark in stored text, and still asks about a comma', () => {
    expect(parseQuantity('2.210m', { ...length, stored: true })).toBe(2.21);
    expect(() => parseQuantity('2,210m', { ...length, stored: true })).toThrow(AmbiguousError);
  });

  it('wants a unit where none may be left out, except for numbers that have none', () => {
    expect(() => parseQuantity('50', { ...length, bare: 'none' })).toThrow(/has no unit/);
    expect(parseQuantity('50', { ...ratio, bare: 'none' })).toBe(50);
    expect(parseQuantity('5.6', { ...fNumber, bare: 'none' })).toBe(5.6);
  });

  it('takes a bare number in the unit the field shows', () => {
    expectClose(parseQuantity('7.25', { ...length, bare: 'ft' }), 2.2098);
  });

  it('reads back every value it writes, to the last digit shown', () => {
    const units = (Object.keys(UNITS) as Unit[]).filter(
      (unit) => !/^1\/|\/cm$|\/in$/.test(unit) && unit !== 'count',
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...units),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (unit, x) => {
          const rounded = Number(x.toPrecision(12));
          const si = rounded * UNITS[unit][1];
          const text = canonical(si, unit);
          expectClose(
            parseQuantity(text, {
              name: 'x',
              unit,
              range: [-Infinity, Infinity],
              example: 1,
              bare: 'none',
              stored: true,
            }),
            si,
            1e-14,
            1e-300,
          );
        },
      ),
    );
  });

  it('never answers with a number out of range, or with none', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[-+0-9., /:'"°a-z]{0,12}$/)),
        (text) => {
          try {
            const value = parseQuantity(text, length);
            expect(value).toBeGreaterThanOrEqual(-1e4);
            expect(value).toBeLessThanOrEqual(1e5);
          } catch (error) {
            expect(error).toBeInstanceOf(InputError);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });
});
