import { describe, expect, it } from 'vitest';
import { markOf } from '../../../src/formula/notation/number.ts';
import {
  canonical,
  fitting,
  writeNumber,
  writeQuantity,
  type Style,
} from '../../../src/formula/notation/write.ts';
import type { Digits } from '../../../src/formula/record.ts';
import type { Unit } from '../../../src/formula/units.ts';

describe('numbers as a reader sees them', () => {
  it.each<[number, Digits, Style, string]>([
    [1.0625, 3, {}, '1.06'],
    [2.2, 3, {}, '2.20'],
    [0.04, 3, {}, '0.0400'],
    [12345.6, 3, {}, '12\u202f300'],
    [9999.6, { decimals: 0 }, {}, '10\u202f000'],
    [999.6, 3, {}, '1000'],
    [0.9996, 3, {}, '1.00'],
    [-0.714, { decimals: 2 }, {}, '−0.71'],
    [-0.001, { decimals: 2 }, {}, '0.00'],
    [0, 3, {}, '0'],
    [1.5, { decimals: 2 }, { decimal: 'comma' }, '1,50'],
    [2.5, { significant: 6 }, { exact: true }, '2.5'],
    [100, { significant: 6 }, { exact: true }, '100'],
    [Infinity, 3, {}, '∞'],
    [-Infinity, 3, {}, '−∞'],
    [12345678, { decimals: 0 }, {}, '12\u202f345\u202f678'],
    [1 / 3, { thirds: true }, {}, '0.33'],
  ])('writes %d with %o %o as %s', (x, digits, style, text) => {
    expect(writeNumber(x, digits, style)).toBe(text);
  });

  it.each<[number, Unit, Digits, Style, string]>([
    [2.21, 'm', 3, {}, '2.21 m'],
    [0.085, 'mm', 3, {}, '85.0 mm'],
    [Math.PI / 6, 'deg', 3, {}, '30.0°'],
    [0.167, '%', { decimals: 1 }, {}, '16.7 %'],
    [4, 'f/', { significant: 2 }, {}, 'f/4'],
    [5.6, 'f/', { significant: 2 }, {}, 'f/5.6'],
    [128, 'f/', { significant: 2 }, {}, 'f/128'],
    [5.656854, 'f/', { significant: 4 }, {}, 'f/5.657'],
    [100, 'ISO', 3, {}, 'ISO 100'],
    [1, 'stop', { decimals: 0 }, {}, '1 stop'],
    [-1.5, 'stop', { decimals: 1 }, {}, '−1.5 stops'],
    [4 / 3, 'stop', { thirds: true }, {}, '+1 1/3 stops'],
    [-1, 'stop', { thirds: true }, {}, '−1 stop'],
    [-2 / 3, 'stop', { thirds: true }, {}, '−2/3 stop'],
    [0.1, 'stop', { thirds: true }, {}, '0 stops'],
    [Infinity, 'm', 3, {}, '∞'],
    [2.21, 'ft', 3, {}, '7′ 3″'],
    [1.1303, 'ft', 3, {}, '3′ 8½″'],
    [4.8984, 'ft', 3, {}, '16′ 1″'],
    [0.1, 'ft', 3, {}, '3⅞″'], // 3.937 inches are 31.5 eighths, 31.496 to be nearer
    [0.15, 'ft', 3, {}, '5⅞″'], // 5.906 inches are 47.2 eighths
    [0.05, 'ft', 3, {}, '2″'], // 1.969 inches are 15.7 eighths
    [0.02, 'ft', 3, {}, '0.79″'], // below an inch an eighth says too little
    [0.3, 'ft', 3, {}, '11¾″'], // 11.811 inches are 94.5 eighths, 94.488 to be nearer
    [0.304, 'ft', 3, {}, '1′ 0″'], // 11.969 inches are 95.7 eighths
    [0.6, 'ft', 3, {}, '1′ 11½″'], // 23.622 inches are 94.5 quarters, 94.488 to be nearer
    [0.84, 'ft', 3, {}, '2′ 9″'], // 33.071 inches are 132.3 quarters
    [0.85, 'ft', 3, {}, '2′ 9½″'], // 33.465 inches are 133.9 quarters
    [-0.1, 'ft', 3, {}, '−3⅞″'],
    [0.3048, 'ft', 3, {}, '1′ 0″'],
    [3.111, 'ft', 3, {}, '10′ 2″'], // 122.5 inches: whole ones from ten feet up
    [11, 'stop', { decimals: 0 }, {}, '11 stops'],
    [21, 'stop', { decimals: 0 }, {}, '21 stops'],
    [-1, 'stop', { decimals: 0 }, {}, '−1 stop'],
    // as shutters are marked, below a third of a second
    [1 / 125, 's', { fraction: true }, {}, '1/125 s'],
    [0.25, 's', { fraction: true }, {}, '1/4 s'],
    [0.29, 's', { fraction: true }, { decimal: 'comma' }, '1/3,45 s'],
    [1 / 12500, 's', { fraction: true }, {}, '1/12\u202f500 s'],
    [0.3, 's', { fraction: true }, {}, '0.30 s'],
    [2, 's', { fraction: true }, {}, '2.0 s'],
    [0, 's', { fraction: true }, {}, '0 s'],
    [-0.7, 'ft', 3, {}, '−2′ 3½″'],
    [0.0254, 'in', 3, {}, '1.00″'],
  ])('writes %d in %s with %o as %s', (si, unit, digits, style, text) => {
    expect(writeQuantity(si, unit, digits, style)).toBe(text);
  });

  it.each<[number, Unit, string]>([
    [0.085, 'mm', '85 mm'],
    [1.8796000000000002, 'm', '1.8796 m'],
    [Infinity, 'm', 'infinity'],
    [5.6, 'f/', 'f/5.6'],
    [0.1, '%', '10 %'],
    [-0.5, 'stop', '-0.5 stop'],
    [0.04, '1', '0.04'],
    [400, 'ISO', '400'],
    [3, 'count', '3'],
  ])('stores %d in %s as %s, in plain ASCII', (si, unit, text) => {
    expect(canonical(si, unit)).toBe(text);
  });

  it.each<[number, Unit, Unit]>([
    [15.2, 'cm', 'm'],
    [1, 'cm', 'm'],
    [-1.5, 'mm', 'm'],
    [0.999, 'cm', 'cm'],
    [0.999, 'mm', 'mm'],
    [0.01, 'cm', 'cm'],
    [0.0035, 'cm', 'mm'],
    [-0.0035, 'cm', 'mm'],
    [0.0000035, 'mm', 'mm'],
    [0.0035, 'm', 'm'],
    [Infinity, 'cm', 'm'],
    [15, '%', '%'],
  ])('says a length of %d m, reckoned in %s, in %s', (si, unit, expected) => {
    expect(fitting(si, unit)).toBe(expected);
  });

  it.each([
    ['2,5', 'comma'],
    ['1.234,5', 'comma'],
    ['2.5', 'point'],
    ['1,234.5', 'point'],
    ['85', undefined],
    ['1/200', undefined],
    ['2,5 m', 'comma'],
    ['2.5mm', 'point'],
    // The same mark twice groups thousands.
    ['1,234,567', undefined],
    ['12.345.678 mm', undefined],
  ])('tells which decimal mark %s used', (text, mark) => {
    expect(markOf(text)).toBe(mark);
  });
});
