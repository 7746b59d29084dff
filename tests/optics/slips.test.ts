import { describe, expect, it } from 'vitest';
import { complete, readInput } from '../../src/formula/read.ts';
import { idOf, type Formula, type Results } from '../../src/formula/record.ts';
import { evaluateText } from '../../src/formula/evaluate.ts';
import { expectClose } from '../support/close.ts';
import { recordOf, records } from '../support/records.ts';

const pairsOf = (line: string): (readonly [string, string])[] =>
  line.split(', ').map((pair) => {
    const at = pair.indexOf('=');
    return [pair.slice(0, at), pair.slice(at + 1)] as const;
  });

/** What someone who took a wrong turn gets from a line of `id=text` pairs. */
const slipped = (formula: Formula, slip: string, line: string): Results => {
  const given = Object.fromEntries(
    pairsOf(line).map(([id, text]) => {
      const [key, input] = Object.entries(formula.inputs).find(([, one]) => idOf(one) === id) ?? [];
      if (key === undefined || !input) throw new Error(`${formula.id} has no input ${id}`);
      return [key, readInput(input, text, { stored: true })];
    }),
  );
  const found = formula.slips?.[slip];
  if (!found) throw new Error(`${formula.id} has no slip ${slip}`);
  return found.compute(complete(formula, given));
};

/**
 * Every wrong turn a record knows: from what, and the wrong number it ends in, worked out by hand.
 */
const wrong: readonly (readonly [string, string, string, string, number])[] = [
  ['angle-of-view', 'half-angle', 'format=36x24, focal-length=50mm', 'horizontal', Math.atan(36 / 100)],
  // 85 × 900/36, and 85 × (1 + 900/24)
  ['framing-distance', 'pinhole', 'format=36x24, orientation=portrait, focal-length=85mm, frame-height=0.9m', 's', 2.125],
  ['framing-distance', 'wrong-side', 'format=36x24, orientation=portrait, focal-length=85mm, frame-height=0.9m', 's', 3.2725],
  // 36 × 2210/85
  ['frame-size', 'pinhole', 'format=36x24, orientation=portrait, focal-length=85mm, subject-distance=2.21m', 'H', 0.936],
  ['perspective', 'other-way', 'subject-distance=0.25m, depth=0.1m', 'ratio', 0.25 / 0.35],
  // 24 × 2125/85, and 24 × (3710 − 85)/85
  ['backdrop-coverage', 'child-plane', 'format=36x24, orientation=portrait, focal-length=85mm, subject-distance=2.21m, backdrop-distance=1.5m', 'viewWidth', 0.6],
  ['backdrop-coverage', 'refocused', 'format=36x24, orientation=portrait, focal-length=85mm, subject-distance=2.21m, backdrop-distance=1.5m', 'viewWidth', (0.024 * 3.625) / 0.085],
  // 80 × 5/10, where 80 × 10/5 is right: sides of 3:4 and 6:8
  ['equivalence', 'upside', 'format=4x3mm, to-format=8x6mm, focal-length=80mm', 'fEquivalent', 0.04],
  // 0.30 + 1.5 + 0.80 + 85 mm × (1 + 25)
  ['room-fit', 'from-the-lens', 'format=36x24, orientation=portrait, frame-height=0.9m, focal-length=85mm, backdrop-clearance=0.3m, backdrop-distance=1.5m, camera-room=0.8m', 'needed', 4.81],
  ['spotter-reach', 'whole-width', 'frame-width=0.6m, child-offset=-0.1m, body-clearance=0.1m, reach=0.5m', 'gap', 0.5],
  // ES/C = 200 against N²/t = 10 240
  ['ambient-exposure', 'stops-as-share', 'illuminance=500lx, f-number=f/8, shutter=1/160s, iso=100', 'share', 200 / 10240],
  // 85²/(4 × 2125) mm, and half of 0.85 × 1.5/3.71 mm
  ['background-blur', 'at-infinity', 'format=36x24, focal-length=85mm, f-number=f/4, subject-distance=2.21m, backdrop-distance=1.5m', 'sensor', 0.00085],
  ['background-blur', 'radius', 'format=36x24, focal-length=85mm, f-number=f/4, subject-distance=2.21m, backdrop-distance=1.5m', 'sensor', (0.00085 * 0.75) / 3.71],
  ['circle-of-confusion', 'print-blur', 'format=36x24, enlargement=8, viewing-distance=25cm, acuity=4arcmin', 'c', 0.5 * Math.tan(Math.PI / 5400)],
  // In front 2.21 × 0.03/0.88 and behind 2.21 × 0.03/0.82, by mD = 0.85 mm
  ['depth-of-field', 'thirds', 'focal-length=85mm, f-number=f/4, subject-distance=2.21m, circle=0.03mm', 'inFront', (2.21 * 0.03 * (1 / 0.88 + 1 / 0.82)) / 3],
  // 2 × 4 × 0.03 × 2210²/85² = 0.24 × 26² mm
  ['depth-of-field', 'pupil-as-f', 'focal-length=85mm, f-number=f/4, subject-distance=2.21m, circle=0.03mm', 'total', 0.24 * 26 ** 2 * 0.001],
  ['diffraction', 'radius', 'f-number=f/8, wavelength=500nm, magnification=1, pupil-magnification=0.5', 'airy', 1.22 * 500e-9 * 8 * 3],
  // log2(4/(1/2)), and EV 4 made two stops more by ISO 400
  ['exposure-value', 'no-square', 'f-number=f/4, shutter=1/2s', 'ev', 3],
  ['exposure-value', 'iso-wrong-way', 'f-number=f/2, shutter=1/4s, iso=400', 'ev100', 6],
  ['f-stop', 'no-square', 'from=f/4, to=f/8', 'stops', 1],
  ['f-stop', 'wrong-way', 'from=f/4, to=f/8', 'stops', -2],
  ['movement-blur', 't05-as-t01', 'speed=2m/s, magnification=0.04, flash-t05=1/1000s', 'flash', 0.00008],
  ['movement-blur', 't05-as-t01', 'speed=2m/s, focal-length=85mm, subject-distance=2.21m, flash-t01=3.32ms', 'flash', 0.00008],
  // 2 m × (1/cos 60° − 1), and the same for a shift of 2 tan 60°
  ['recompose-error', 'along-old-axis', 'subject-distance=2m, angle=60deg', 'error', 2],
  ['recompose-error', 'along-old-axis', `subject-distance=2m, shift=${2 * Math.sqrt(3)}m`, 'error', 2],
  // log2 2 instead of twice that
  ['falloff', 'no-square', 'near=1m, far=2m', 'stops', 1],
  // 40/5 at a quarter: 8/4, where 8/2 is right
  ['flash-exposure', 'power-as-f-number', 'guide-number=40m, distance=5m, iso=100, power=1/4', 'N', 2],
  // One metre across and taken for a radius: 1/√(2^0.1 − 1)
  ['extended-source', 'diameter-for-radius', 'shape=disc, width=1m, distance=1m', 'tenth', 1 / Math.sqrt(2 ** 0.1 - 1)],
  ['softness', 'half-angle', 'source-width=1m, distance=0.5m', 'angle', Math.PI / 4],
  // 15 tan 45°, where the nose at 15° sees the key 30° round
  ['light-on-face', 'turn-forgotten', 'key-azimuth=45deg, key-elevation=30deg, head-turn=15deg, nose-length=15mm', 'across', 0.015],
  ['lighting-ratio', 'fill-on-one-side', 'key=f/8, fill=f/4', 'ratio', 4],
  ['lighting-ratio', 'f-numbers-unsquared', 'key=f/8, fill=f/4', 'ratio', 3],
  // π · 4 · 0.7/80.72 = 0.10897
  ['room-fill', 'one-bounce', 'key-distance=2m, room-length=5m, room-width=3.6m, ceiling=2.6m, reflectance=0.7', 'under', -Math.log2((Math.PI * 2.8) / 80.72)],
  // 1/(1 + 0.36) of it
  ['fill-card', 'diameter-for-radius', 'size=1m, distance=0.6m, reflectance=1', 'under', Math.log2(1.36)],
  ['beam-spread', 'factor-two', 'angle=90deg, distance=2m', 'width', 2],
  ['beam-spread', 'whole-angle', 'angle=45deg, distance=2m', 'width', 4],
  // The spot alone, as strong as the key: spill 1/4 forgotten
  ['backdrop-exposure', 'spill-forgotten', 'key-distance=1m, backdrop-distance=1m, light-distance=1m, light-stops=1', 'against', 1],
  ['gel', 'kelvin-added', 'source=5500K, gel-shift=100mired', 'temperature', 5400],
  ['rim-light', 'distance-forgotten', 'format=36x24, focal-length=85mm, camera-distance=2m, light-behind=2m, light-aside=0m, light-height=0m, beam-angle=20deg, set-depth=1m, light-stops=1, key-distance=1m', 'over', 1],
  ['feathering', 'distance-alone', 'beam-angle=60deg, near-distance=1m, far-distance=2m, angle-between=20deg, aim=0deg', 'after', 2],
  // The whole file on the print: 6000 px on 20 in, where 4000 by 4000 are left of it
  ['print-size', 'crop-forgotten', 'pixel-width=6000px, pixel-height=4000px, print-width=20in, print-height=20in', 'resolution', 300 / 0.0254],
  ['viewing-distance', 'pairs-of-lines', 'viewing-distance=1m', 'resolution', 2 / Math.tan(Math.PI / 10800)],
  ['wrap-allowance', 'one-side', 'front-width=40cm, front-height=50cm, edge-depth=20mm, fold-over=15mm, edge=wrapped', 'fileWidth', 0.435],
  // 7 · 9.80665 · 0.5/0.9, twice what tips it
  ['stand-stability', 'radius-for-edge', 'column-mass=7kg, foot-radius=0.5m, legs=3, pull-height=0.9m', 'pullForce', (7 * 9.80665 * 0.5) / 0.9],
  ['platform-drop', 'head-forgotten', 'platform-height=0.45m, head-height=0.87m', 'headSpeed', Math.sqrt(0.9 * 9.80665)],
  ['mains-load', 'efficiency-forgotten', 'flash-energy=400J, cycle-time=1s, efficiency=0.5, voltage=100V, rating=10A', 'current', 4],
  // Twenty frames a second for twenty a minute: a third of a second becomes 1/20 s
  ['recycle-budget', 'minutes-as-seconds', 'recycle-time=5s, frame-rate=20', 'wait', 4.95],
  ['break-even', 'rounded-down', 'fixed-cost=480, price=120, variable-cost=30', 'sittings', 5],
  ['break-even', 'price-alone', 'fixed-cost=480, price=120, variable-cost=60', 'sittings', 4],
]; // prettier-ignore

describe('a known wrong turn', () => {
  it('of every record is among those tried here', () => {
    const known = records.flatMap(({ id, slips }) =>
      Object.keys(slips ?? {}).map((slip) => `${id} ${slip}`),
    );
    expect([...new Set(wrong.map(([id, slip]) => `${id} ${slip}`))].sort()).toEqual(known.sort());
  });

  it.each(wrong)('in %s, %s: %s gives %s %d', (id, slip, line, key, value) => {
    const record = recordOf(id);
    const results = slipped(record, slip, line);
    expect(Object.keys(results)).toEqual([key]);
    expectClose(results[key] as number, value, 1e-9);
    // Were it the right answer too, nobody could be told that they had taken it.
    const output = record.outputs[key];
    if (!output) throw new Error(`${id} has no result ${key}`);
    const right = evaluateText(record, pairsOf(line)).results[idOf(output)]?.value as number;
    expect(Math.abs(right / value - 1)).toBeGreaterThan(0.005);
  });

  it.each([
    ['equivalence', 'upside', 'format=36x24, f-number=4'],
    ['room-fit', 'from-the-lens', 'format=36x24, frame-height=0.9m, focal-length=85mm'],
    ['room-fit', 'from-the-lens', 'format=36x24, frame-height=0.9m, backdrop-clearance=0.3m, backdrop-distance=1.5m, camera-room=0.8m'],
    ['room-fit', 'from-the-lens', 'format=36x24, frame-height=0.9m, focal-length=85mm, backdrop-distance=1.5m, camera-room=0.8m'],
    ['room-fit', 'from-the-lens', 'format=36x24, frame-height=0.9m, focal-length=85mm, backdrop-clearance=0.3m, camera-room=0.8m'],
    ['room-fit', 'from-the-lens', 'format=36x24, frame-height=0.9m, focal-length=85mm, backdrop-clearance=0.3m, backdrop-distance=1.5m'],
    ['background-blur', 'radius', 'format=36x24, focal-length=85mm, f-number=4, subject-distance=2m'],
    ['diffraction', 'radius', 'wavelength=550nm'],
    ['exposure-value', 'iso-wrong-way', 'f-number=f/2, shutter=1/4s'],
  ])('in %s, %s, leads nowhere where an input it needs was left out: %s', (id, slip, line) => {
    expect(slipped(recordOf(id), slip, line)).toEqual({});
  }); // prettier-ignore
});
