import { describe, expect, it } from 'vitest';
import card from '../../../src/optics/light/fill-card.ts';
import ratio from '../../../src/optics/light/lighting-ratio.ts';
import room from '../../../src/optics/light/room-fill.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../aperture/support.ts';

describe('lighting ratio', () => {
  it('a key of f/8 and a fill a stop less, reaching both sides, is 3 to 1, not 2 to 1', () => {
    const line = 'key=f/8, fill=f/5.6, marks=exact';
    expectClose(value(ratio, line, 'ratio'), 3);
    expectClose(value(ratio, line, 'key-to-fill'), 2);
    expectClose(value(ratio, line, 'stops'), Math.log2(3));
    // √(64 + 32) = 9.80, half a stop and a bit over f/8.
    expect(run(ratio, line).results['total']?.text).toBe('f/9.8');
    expectClose(2 * Math.log2(value(ratio, line, 'total') / 8), 0.585, 1e-3);
  });

  it('takes f/5.6 as typed unless told otherwise', () => {
    expectClose(value(ratio, 'key=f/8, fill=f/5.6', 'ratio'), 1 + 64 / 31.36);
  });

  it('reads lux as well: 800 and 200 are 5 to 1, and 4 to 1 by the other convention', () => {
    expectClose(value(ratio, 'key=800lx, fill=200 lux', 'ratio'), 5);
    expectClose(value(ratio, 'key=800lx, fill=200lx', 'key-to-fill'), 4);
    // N² = E · 100/250 at ISO 100 and 1 s: 160 lx is f/8.
    expect(run(ratio, 'key=160lx, fill=40lx').given['key']).toBe('f/8');
    expect(() => run(ratio, 'key=xlx, fill=f/4')).toThrow(/Reading must be/);
  });

  it('adds up to four lights, the first of them the key', () => {
    // 64 against 16 + 16
    expectClose(value(ratio, 'lights=f/8; f/4; f/4', 'ratio'), 3);
    expectClose(value(ratio, 'lights=f/8; f/4; f/4', 'total'), Math.sqrt(96));
    expect(run(ratio, 'lights=f/8').results['ratio']?.text).toBe('∞');
    expect(() => run(ratio, 'lights=f/8; f/8; f/8; f/8; f/8')).toThrow(/1 to 4 values/);
    expect(() => run(ratio, 'key=f/8')).toThrow(/exactly one of/);
  });
});

describe('room fill', () => {
  const set = 'room-length=5m, room-width=3.6m, ceiling=2.6m';

  it('a white room of 5.0 × 3.6 × 2.6 m with the key at 2 m: 1.46 stops under, at most 3.8 to 1', () => {
    const line = `key-distance=2m, ${set}, reflectance=0.7`;
    // π · 4 · 0.7 / (80.72 · 0.3) = 0.3632
    expectClose(value(room, line, 'under-key'), 1.461, 1e-3);
    expect(run(room, line).results['ratio']?.text).toBe('3.8');
  });

  it('a dark one with the key at 1.2 m: 5.4 stops under', () => {
    const line = `key-distance=1.2m, ${set}, reflectance=0.3`;
    expect(run(room, line).results['under-key']?.text).toBe('5.4 stops');
  });

  it('bounces without end add up to ρ/(1 − ρ) of the first', () => {
    // Added one by one: 0.7 + 0.49 + …
    let sum = 0;
    for (let i = 1; i < 200; i++) sum += 0.7 ** i;
    const line = `key-distance=2m, ${set}, reflectance=0.7`;
    expectClose(2 ** -value(room, line, 'under-key'), (Math.PI * 4 * sum) / 80.72, 1e-9);
  });

  it('refuses walls that swallow nothing', () => {
    expect(() => run(room, `key-distance=2m, ${set}, reflectance=1`)).toThrow(
      /between 0.01 and 0.99/,
    );
  });
});

describe('fill card', () => {
  it('a white one 1.0 m across at 0.6 m, lit like the face: 1.44 stops under, 3.7 to 1', () => {
    const line = 'size=1m, distance=0.6m, reflectance=0.9';
    // 0.9 × 0.25 / 0.61 = 0.3689
    expectClose(value(card, line, 'under-key'), -Math.log2(0.225 / 0.61));
    expect(run(card, line).results['ratio']?.text).toBe('3.7');
  });

  it('lit a stop less gives a stop less', () => {
    const line = 'size=1m, distance=0.6m, reflectance=0.9';
    expectClose(
      value(card, `${line}, card-light=-1`, 'under-key') - value(card, line, 'under-key'),
      1,
    );
  });
});
