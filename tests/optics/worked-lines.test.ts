import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compute } from '../../src/formula/compute.ts';
import { InputError } from '../../src/formula/errors.ts';
import { complete, readInput } from '../../src/formula/read.ts';
import { idOf, type Formula, type Given, type Results } from '../../src/formula/record.ts';
import { showWorked } from '../../src/formula/show.ts';
import { expectClose } from '../support/close.ts';
import { givenFor, recordOf, records } from '../support/records.ts';

/** The worked line of every record once more, typed off its TeX: the right side's place, and the left side's arithmetic. */
const lines: Readonly<
  Record<string, readonly [string, (v: Readonly<Record<string, number>>) => number]>
> = {
  'angle-of-view': ['horizontal', ({ d = 0, f = 0, m = 0 }) => 2 * Math.atan(d / (2 * f * (1 + m)))],
  'framing-distance': ['s', ({ f = 0, H = 0, h = 0 }) => f * (1 + H / h)],
  'frame-size': ['H', ({ h = 0, s = 0, f = 0, f2 = 0 }) => (h * (s - f)) / f2],
  perspective: ['ratio', ({ s = 0, depth = 0, s2 = 0 }) => (s + depth) / s2],
  'backdrop-coverage': ['viewWidth', ({ w = 0, s = 0, b = 0, forward = 0 }) => (w * (s + b)) / forward],
  'room-fit': ['needed', ({ a = 0, b = 0, f = 0, m = 0, m2 = 0, c = 0 }) => a + b + f * (2 + m + 1 / m2) + c],
  'spotter-reach': ['gap', ({ W = 0, e = 0 }) => W / 2 - e],
  equivalence: ['fEquivalent', ({ f = 0, to = 0, from = 0 }) => (f * to) / from],
  'ambient-exposure': ['over', ({ light = 0, t = 0, N = 0 }) => Math.log2((light * t) / N ** 2)],
  'background-blur': ['sensor', ({ m = 0, D = 0, b = 0, away = 0 }) => (m * D * b) / away],
  'circle-of-confusion': ['c', ({ v = 0, acuity = 0, E = 0 }) => (2 * v * Math.tan(acuity / 2)) / E],
  'depth-of-field': ['near', ({ e = 0, reach = 0, disc = 0, disc2 = 0, c = 0 }) => e + (reach * disc) / (disc2 + c)],
  diffraction: ['airy', ({ wavelength = 0, N = 0, bellows = 0 }) => 2.44 * wavelength * N * bellows],
  'exposure-value': ['ev', ({ N = 0, t = 0 }) => Math.log2(N ** 2 / t)],
  'f-stop': ['stops', ({ from = 0, to = 0 }) => 2 * Math.log2(to / from)],
  'face-in-focus': ['widest', ({ f = 0, m = 0, c = 0, x = 0, away = 0 }) => ((f * m) / c) * (x / away)],
  'movement-blur': ['flash', ({ u = 0, m = 0, t = 0 }) => u * m * t],
  'recompose-error': ['error', ({ s = 0, angle = 0 }) => s * (1 - Math.cos(angle))],
  falloff: ['stops', ({ near = 0, far = 0 }) => 2 * Math.log2(far / near)],
  'flash-exposure': ['N', ({ reach = 0, d = 0, P = 0 }) => (reach / d) * Math.sqrt(P)],
  'extended-source': ['E', ({ L = 0, share = 0 }) => Math.PI * L * share],
  softness: ['angle', ({ w = 0, D = 0 }) => 2 * Math.atan(w / (2 * D))],
  'light-on-face': ['across', ({ n = 0, a = 0 }) => n * Math.tan(a)],
  'lighting-ratio': ['ratio', ({ K = 0, F = 0, F2 = 0 }) => (K + F) / F2],
  'room-fill': ['share', ({ d = 0, rho = 0, A = 0, rest = 0 }) => (Math.PI * d ** 2 * rho) / (A * rest)],
  'fill-card': ['share', ({ rho = 0, light = 0, r = 0, r2 = 0, d = 0 }) => (rho * light * r ** 2) / (r2 ** 2 + d ** 2)],
  'beam-spread': ['square', ({ D = 0, angle = 0 }) => 2 * D * Math.tan(angle / 2)],
  'backdrop-exposure': ['against', ({ spot = 0, spill = 0 }) => Math.log2(spot + spill)],
  gel: ['to', ({ from = 0, shift = 0 }) => from + shift],
  'rim-light': ['round', ({ z = 0, x = 0 }) => Math.atan2(z, x)],
  feathering: ['tan', ({ ratio = 0, n = 0, cos = 0, sin = 0 }) => (ratio ** (2 / n) - cos) / sin],
  'print-size': ['resolution', ({ crop = 0, w = 0 }) => crop / w],
  'viewing-distance': ['resolution', ({ D = 0, acuity = 0 }) => 1 / (D * Math.tan(acuity))],
  'wrap-allowance': ['file', ({ w = 0, depth = 0, fold = 0 }) => w + 2 * (depth + fold)],
  'stand-stability': ['F', ({ restoring = 0, overturning = 0, pull = 0 }) => Math.max(0, restoring - overturning) / pull],
  'platform-drop': ['v', ({ h = 0 }) => Math.sqrt(2 * 9.80665 * h)],
  'mains-load': ['I', ({ P = 0, U = 0 }) => P / U],
  'recycle-budget': ['w', ({ recycle = 0, interval = 0 }) => Math.max(0, recycle - interval)],
  'break-even': ['n', ({ F = 0, M = 0 }) => (F === 0 ? 0 : Math.ceil(F / M - 1e-9))],
}; // prettier-ignore

/** What a reader sees in each place of the line. Worked out by hand, from the given and the formula. */
const shown: readonly (readonly [string, string, Readonly<Record<string, string>>])[] = [
  // v = 88.4 mm, 36/176.8
  ['angle-of-view', 'format=36x24, focal-length=85mm, subject-distance=2.21m',
    { d: '36 mm', f: '85 mm', m: '0.040', horizontal: '23.0°' }],
  ['framing-distance', 'format=36x24, orientation=portrait, focal-length=85mm, frame-height=0.9m',
    { f: '85 mm', H: '900 mm', h: '36 mm', s: '2.21 m' }],
  ['frame-size', 'format=36x24, orientation=portrait, focal-length=85mm, subject-distance=2.21m',
    { h: '36 mm', s: '2210 mm', f: '85 mm', f2: '85 mm', H: '0.900 m' }],
  ['perspective', 'subject-distance=0.25m, depth=0.1m',
    { s: '0.25 m', s2: '0.25 m', depth: '0.10 m', ratio: '1.400' }],
  ['backdrop-coverage', 'format=36x24, orientation=portrait, focal-length=85mm, subject-distance=2.21m, backdrop-distance=1.5m',
    { w: '24 mm', s: '2.21 m', b: '1.50 m', forward: '88.4 mm', viewWidth: '1.01 m' }],
  ['room-fit', 'format=36x24, orientation=portrait, frame-height=0.9m, focal-length=85mm, backdrop-distance=1.5m, backdrop-clearance=0.3m, camera-room=0.8m',
    { a: '0.30 m', b: '1.50 m', f: '85 mm', m: '0.04', m2: '0.04', c: '0.80 m', needed: '4.90 m' }],
  ['room-fit', 'format=36x24, orientation=portrait, frame-height=0.9m',
    { a: '…', b: '…', f: '…', m: '0.04', m2: '0.04', c: '…', needed: '…' }],
  ['spotter-reach', 'frame-width=0.6m, child-offset=-0.1m, body-clearance=0.1m, reach=0.5m',
    { W: '0.60 m', e: '0.10 m', gap: '0.20 m' }],
  ['equivalence', 'format=4x3mm, to-format=8x6mm, focal-length=80mm',
    { f: '80 mm', to: '10 mm', from: '5 mm', fEquivalent: '160 mm' }],
  ['equivalence', 'format=4x3mm, to-format=8x6mm',
    { f: '…', to: '10 mm', from: '5 mm', fEquivalent: '…' }],
  // ES/C = 200
  ['ambient-exposure', 'illuminance=500lx, f-number=f/8, shutter=1/160s, iso=100',
    { light: '200', t: '1/160 s', N: '8.00', over: '−5.68 stops' }],
  // 50 × 100/250 against 64 × 160
  ['ambient-exposure', 'illuminance=50lx, f-number=f/8, shutter=1/160s, iso=100',
    { light: '20.0', t: '1/160 s', N: '8.00', over: '−9.00 stops' }],
  // The marks 1/125 and 5.6 stand for 1/128 and 5.657: 200/(128 × 32)
  ['ambient-exposure', 'illuminance=500lx, f-number=f/5.6, shutter=1/125s, iso=100, marks=exact',
    { light: '200', t: '1/128 s', N: '5.66', over: '−4.36 stops' }],
  // 0.04 × 17 × 1.5/3.71
  ['background-blur', 'format=36x24, focal-length=85mm, f-number=f/5, subject-distance=2.21m, backdrop-distance=1.5m',
    { m: '0.0400', D: '17.0 mm', b: '1.50 m', away: '3.710 m', sensor: '0.275 mm' }],
  ['background-blur', 'format=36x24, focal-length=85mm, f-number=f/5, subject-distance=2.21m',
    { m: '0.0400', D: '17.0 mm', b: '…', away: '…', sensor: '…' }],
  // 62.5 mm × tan 1.5′
  ['circle-of-confusion', 'format=36x24, enlargement=8, viewing-distance=25cm, acuity=3arcmin',
    { v: '25.0 cm', acuity: '3.00′', E: '8.00', c: '0.0273 mm' }],
  // 2210 × 0.85/0.88
  ['depth-of-field', 'focal-length=85mm, f-number=f/4, subject-distance=2.21m, circle=0.03mm',
    { e: '0.0 mm', reach: '2.210 m', disc: '0.850 mm', disc2: '0.850 mm', c: '0.0300 mm', near: '2.135 m' }],
  ['depth-of-field', 'focal-length=85mm, f-number=f/4, subject-distance=2.31m, circle=0.03mm, measured-from=sensor, lens-offset=100mm',
    { e: '100.0 mm', reach: '2.210 m', disc: '0.850 mm', disc2: '0.850 mm', c: '0.0300 mm', near: '2.235 m' }],
  ['diffraction', 'f-number=f/8, wavelength=500nm',
    { wavelength: '500 nm', N: '8.00', bellows: '1.00', airy: '9.76 µm' }],
  ['diffraction', 'f-number=f/5.6, wavelength=500nm, magnification=1, pupil-magnification=0.8, marks=exact',
    { wavelength: '500 nm', N: '5.66', bellows: '2.25', airy: '15.5 µm' }],
  // 2.44 × 1.234 × 8
  ['diffraction', 'f-number=f/8, wavelength=1234nm',
    { wavelength: '1230 nm', N: '8.00', bellows: '1.00', airy: '24.1 µm' }],
  ['diffraction', 'wavelength=500nm, marks=exact',
    { wavelength: '500 nm', N: '…', bellows: '1.00', airy: '…' }],
  ['diffraction', 'wavelength=500nm', { wavelength: '500 nm', N: '…', bellows: '1.00', airy: '…' }],
  // log2 3920
  ['exposure-value', 'f-number=f/5.6, shutter=1/125s', { N: '5.60', t: '1/125 s', ev: '11.94' }],
  ['f-stop', 'from=f/4, to=f/5.6', { from: '4.00', to: '5.60', stops: '0.97 stops' }],
  // 85 × 0.04/0.03 × 75/2285, and × 100/2110
  ['face-in-focus', 'focal-length=85mm, f-number=f/4, subject-distance=2.21m, circle=0.03mm, reach-ahead=25mm, reach-behind=75mm',
    { f: '85.00 mm', m: '0.0400', c: '0.0300 mm', x: '75.0 mm', away: '2285 mm', widest: 'f/3.72' }],
  ['face-in-focus', 'focal-length=85mm, f-number=f/4, subject-distance=2.21m, circle=0.03mm, reach-ahead=100mm, reach-behind=25mm',
    { f: '85.00 mm', m: '0.0400', c: '0.0300 mm', x: '100 mm', away: '2110 mm', widest: 'f/5.37' }],
  // m = 85/19915
  ['face-in-focus', 'focal-length=85mm, f-number=f/4, subject-distance=20m, circle=0.03mm, reach-ahead=25mm, reach-behind=75mm',
    { f: '85.00 mm', m: '0.00427', c: '0.0300 mm', x: '75.0 mm', away: '20\u202f080 mm', widest: 'f/0.0452' }],
  ['movement-blur', 'speed=1m/s, magnification=0.04, flash-t01=1/1000s',
    { u: '1.0 m/s', m: '0.0400', t: '1/1000 s', flash: '0.040 mm' }],
  // 3.32 ms is 1/301 s.
  ['movement-blur', 'speed=1m/s, magnification=0.04, flash-t05=1/1000s',
    { u: '1.0 m/s', m: '0.0400', t: '1/301 s', flash: '0.13 mm' }],
  ['movement-blur', 'speed=1m/s, magnification=0.04, shutter=1/100s',
    { u: '1.0 m/s', m: '0.0400', t: '…', flash: '…' }],
  // 2 m × (1 − 0.996195)
  ['recompose-error', 'subject-distance=2m, angle=5deg',
    { s: '2.000 m', angle: '5.00°', error: '7.6 mm' }],
  // 2 m × (1 − 0.965926)
  ['recompose-error', 'subject-distance=2m, angle=15deg',
    { s: '2.000 m', angle: '15.0°', error: '68 mm' }],
  ['falloff', 'near=1m, far=2m', { near: '1.00 m', far: '2.00 m', stops: '2.00 stops' }],
  // 40 m at ISO 100, a quarter of the power
  ['flash-exposure', 'guide-number=40m, distance=5m, iso=100, power=1/4',
    { reach: '40.0 m', d: '5.00 m', P: '1/4', N: 'f/4' }],
  // Half a metre of radius at half a metre: half of it
  ['extended-source', 'shape=disc, width=1m, distance=0.5m, luminance=1000cd/m2',
    { L: '1000 cd/m²', share: '0.500', E: '1570 lx' }],
  ['extended-source', 'shape=disc, width=1m, distance=0.5m', { L: '…', share: '0.500', E: '…' }],
  ['softness', 'source-width=1m, distance=0.5m', { w: '1.00 m', D: '0.50 m', angle: '90.0°' }],
  ['light-on-face', 'key-azimuth=60deg, key-elevation=30deg, head-turn=15deg, nose-length=15mm',
    { n: '15.0 mm', a: '45.0°', across: '15.0 mm' }],
  ['light-on-face', 'key-azimuth=90deg, key-elevation=30deg, nose-length=15mm',
    { n: '15.0 mm', a: '90.0°', across: '…' }],
  ['lighting-ratio', 'key=f/8, fill=f/4', { K: '64.0', F: '16.0', F2: '16.0', ratio: '5.0' }],
  ['lighting-ratio', 'lights=f/8', { K: '64.0', F: '0', F2: '0', ratio: '…' }],
  ['room-fill', 'key-distance=2m, room-length=5m, room-width=3.6m, ceiling=2.6m, reflectance=0.7',
    { d: '2.00 m', rho: '0.70', A: '80.7 m²', rest: '0.30', share: '0.36' }],
  ['fill-card', 'size=1m, distance=0.6m, reflectance=0.9, card-light=-1',
    { rho: '0.90', light: '0.50', r: '0.50 m', r2: '0.50 m', d: '0.60 m', share: '0.18' }],
  ['beam-spread', 'angle=20deg, distance=2m', { D: '2.00 m', angle: '20.0°', square: '0.705 m' }],
  ['backdrop-exposure', 'key-distance=1m, backdrop-distance=1m, light-distance=1m, light-stops=0',
    { spot: '1.00', spill: '0.250', against: '0.32 stops' }],
  ['gel', 'source=5000K, gel-shift=100mired',
    { from: '200 mired', shift: '100 mired', to: '300 mired' }],
  ['rim-light', 'format=36x24, focal-length=85mm, camera-distance=2m, light-behind=1m, light-aside=-1m, light-height=0m, beam-angle=20deg, set-depth=1m, light-stops=0',
    { z: '1.00 m', x: '1.00 m', round: '45.0°' }],
  // (4/3)^(2/4.82) = 1.127; cos 60° = 0.5, sin 0.866
  ['feathering', 'beam-angle=60deg, near-distance=1.2m, far-distance=1.6m, angle-between=60deg',
    { ratio: '1.33', n: '4.82', cos: '0.500', sin: '0.866', tan: '0.724' }],
  ['print-size', 'pixel-width=6000px, pixel-height=4000px, print-width=50cm, print-height=50cm',
    { crop: '4000 px', w: '50.0 cm', resolution: '203 px/in' }],
  ['print-size', 'pixel-width=6000px, pixel-height=4000px', { crop: '6000 px', w: '…', resolution: '…' }],
  ['viewing-distance', 'viewing-distance=1m', { D: '100 cm', acuity: '1.00′', resolution: '87.3 px/in' }],
  ['wrap-allowance', 'front-width=40cm, front-height=50cm, edge-depth=20mm, fold-over=15mm, edge=wrapped',
    { w: '40.0 cm', depth: '20.0 mm', fold: '15.0 mm', file: '47.0 cm' }],
  ['stand-stability', 'column-mass=7kg, foot-radius=0.5m, legs=3, pull-height=0.9m',
    { restoring: '17.2 N·m', overturning: '0 N·m', pull: '0.90 m', F: '19.1 N' }],
  ['platform-drop', 'platform-height=0.45m', { h: '0.45 m', v: '2.97 m/s' }],
  ['mains-load', 'load=1000W; 500W, voltage=100V, rating=16A', { P: '1500 W', U: '100 V', I: '15.0 A' }],
  ['recycle-budget', 'recycle-time=0.6s, frame-rate=20', { interval: '3.00 s', recycle: '0.600 s', w: '0 s' }],
  // 0.6 − 60/120
  ['recycle-budget', 'recycle-time=0.6s, frame-rate=120', { interval: '0.500 s', recycle: '0.600 s', w: '0.10 s' }],
  ['break-even', 'fixed-cost=480, price=120, variable-cost=30', { F: '480.00 EUR', M: '90.00 EUR', n: '6' }],
  ['break-even', 'fixed-cost=480, price=30, variable-cost=30', { F: '480.00 EUR', M: '0.00 EUR', n: '…' }],
]; // prettier-ignore

const attempt = (formula: Formula, given: Given): [Given, Results] | undefined => {
  try {
    const all = complete(formula, given);
    return [all, compute(formula, all)];
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
};

describe('the worked line', () => {
  it('of every record is tried here', () => {
    expect(Object.keys(lines).sort()).toEqual(records.map(({ id }) => id).sort());
  });

  it.each(Object.entries(lines))(
    'of %s is true: its numbers make its result',
    (id, [place, left]) => {
      const record = recordOf(id);
      let tried = 0;
      fc.assert(
        fc.property(givenFor(record), (given) => {
          const [all, results] = attempt(record, given) ?? [];
          if (!all || !results) return;
          const shown = record.worked.values(all, results);
          const values = Object.fromEntries(
            Object.entries(shown).map(([key, { value = NaN }]) => [key, value]),
          );
          const right = values[place] ?? NaN;
          // Where an input was left out there is an ellipsis, and nothing to try.
          if (!Object.values(values).every(Number.isFinite)) return;
          tried++;
          // Some lines end in a number on the way to the results.
          if (place in record.outputs) expect(right).toBe(results[place]);
          // A line that takes small differences of cosines loses the digits that the formula itself keeps.
          expectClose(left(values), right, 1e-7, 1e-12);
        }),
      );
      expect(tried).toBeGreaterThan(50);
    },
  );

  it('of every record is shown here', () => {
    expect(new Set(shown.map(([id]) => id))).toEqual(new Set(Object.keys(lines)));
  });

  it.each(shown)('of %s, from %s, shows %o', (id, line, wanted) => {
    const record = recordOf(id);
    const keys = new Map(Object.entries(record.inputs).map(([key, one]) => [idOf(one), key]));
    const given = Object.fromEntries(
      line.split(', ').map((pair) => {
        const at = pair.indexOf('=');
        const key = keys.get(pair.slice(0, at));
        const input = record.inputs[key ?? ''];
        if (key === undefined || !input) throw new Error(`${id} has no input for ${pair}`);
        return [key, readInput(input, pair.slice(at + 1), { stored: true })];
      }),
    );
    const all = complete(record, given);
    const places = record.worked.values(all, compute(record, all));
    expect(
      Object.fromEntries(Object.entries(places).map(([key, one]) => [key, showWorked(one)])),
    ).toEqual(wanted);
  });
});
