import { describe, expect, it } from 'vitest';
import { evaluateText } from '../../../src/formula/evaluate.ts';
import { recordOf } from '../../support/records.ts';
import { expectClose } from '../../support/close.ts';

const fit = (change: Record<string, string> = {}): Record<string, { value: unknown }> =>
  evaluateText(
    recordOf('room-fit'),
    Object.entries({
      format: '36x24', orientation: 'portrait', 'frame-height': '0.90 m', 'focal-length': '85 mm',
      'backdrop-distance': '1.5 m', 'backdrop-clearance': '0.30 m', 'camera-room': '0.80 m', ...change,
    }), // prettier-ignore
  ).results;

describe('fit in the room', () => {
  it('needs 4.90 m for the harbour set, and takes 59 mm in 4.2 m', () => {
    // 0.30 + 1.5 + 0.80 + 85 mm × (2 + 0.04 + 25)
    expectClose(fit()['length-needed']?.value as number, 2.6 + 0.085 * 27.04);
    expectClose(
      fit({ 'room-length': '4.2 m' })['longest-focal-length']?.value as number,
      1.6 / 27.04,
    );
  });

  it('has nothing to spare with the longest lens', () => {
    const longest = fit({ 'room-length': '4.2 m' })['longest-focal-length']?.value as number;
    const { spare } = fit({ 'room-length': '4.2 m', 'focal-length': `${longest * 1000} mm` });
    expectClose(spare?.value as number, 0, 0, 1e-12);
  });

  it('allows no lens at all in a room shorter than what stands in it', () => {
    expect(fit({ 'room-length': '2.5 m' })['longest-focal-length']?.value).toBe(0);
  });

  it.each<[string, boolean, Record<string, string>?]>([
    // Frame 0.60 m wide at 2.21 m is 0.60 × 3.71/2.21 = 1.007 m at the backdrop.
    ['1.01 m', true],
    ['1.00 m', false],
    // At the backdrop’s own foot the frame is 0.60 m wide: just so much is enough.
    ['0.60 m', true, { 'backdrop-distance': '0 m' }],
    ['0.599 m', false, { 'backdrop-distance': '0 m' }],
  ])('walls %s apart are clear of the field: %s', (width, clear, change = {}) => {
    expect(fit({ 'room-width': width, ...change })['clear-of-walls']?.value).toBe(clear);
  });

  it.each([
    ['3.0 m', '2.6 m', '1.2 m', true], // 0.6 + 2.4 = 3.0 wide, 0.9 + 1.2 = 2.1 high
    ['2.9 m', '2.6 m', '1.2 m', false],
    ['3.6 m', '2.0 m', '1.2 m', false],
    ['3.6 m', '2.1 m', '1.2 m', true],
  ])('in %s by %s a light with %s clearance fits: %s', (width, ceiling, light, fits) => {
    const results = fit({ 'room-width': width, ceiling, 'light-clearance': light });
    expect(results['light-fits']?.value).toBe(fits);
  });

  it('has room for a light where there is exactly enough', () => {
    // A frame 1.95 m high is 1.30 m wide: 3 × 1.30 across. And 1.85 + 1.30 up.
    const across = { 'room-width': '3.90 m', ceiling: '4 m', 'light-clearance': '1.30 m' };
    expect(fit({ 'frame-height': '1.95 m', ...across })['light-fits']?.value).toBe(true);
    const up = { 'room-width': '9 m', ceiling: '3.15 m', 'light-clearance': '1.30 m' };
    expect(fit({ 'frame-height': '1.85 m', ...up })['light-fits']?.value).toBe(true);
  });

  it('says of each question what it takes to answer it', () => {
    const whole = {
      format: '36x24', 'frame-height': '0.90 m', 'focal-length': '85 mm', 'backdrop-distance': '1.5 m',
      'backdrop-clearance': '0.30 m', 'camera-room': '0.80 m', 'room-length': '6 m', 'room-width': '5 m',
      ceiling: '3 m', 'light-clearance': '0.5 m',
    }; // prettier-ignore
    const needs = {
      'longest-focal-length': ['room-length', 'backdrop-clearance', 'backdrop-distance', 'camera-room'],
      'length-needed': ['focal-length', 'backdrop-clearance', 'backdrop-distance', 'camera-room'],
      spare: ['room-length', 'focal-length', 'backdrop-clearance', 'backdrop-distance', 'camera-room'],
      'clear-of-walls': ['focal-length', 'backdrop-distance', 'room-width'],
      'light-fits': ['room-width', 'ceiling', 'light-clearance'],
    }; // prettier-ignore
    for (const left of Object.keys(whole).slice(2)) {
      const results = evaluateText(
        recordOf('room-fit'),
        Object.entries(whole).filter(([id]) => id !== left),
      ).results;
      for (const [id, needed] of Object.entries(needs))
        expect([left, id, results[id]?.text === 'not given']).toEqual([
          left,
          id,
          needed.includes(left),
        ]);
    }
  });
});

describe('spotter’s reach', () => {
  const spot = (
    offset: string,
    clearance: string,
    reach: string,
  ): Record<string, { value: unknown }> =>
    evaluateText(recordOf('spotter-reach'), [
      ['frame-width', '0.60 m'],
      ['child-offset', offset],
      ['body-clearance', clearance],
      ['reach', reach],
    ]).results;

  it.each([
    ['0 m', '0.10 m', '0.40 m', 0.3, true], // 0.30 + 0.10 is just within 0.40
    ['0 m', '0.11 m', '0.40 m', 0.3, false],
    ['0.1 m', '0.20 m', '0.40 m', 0.2, true],
    ['-0.1 m', '0.20 m', '0.40 m', 0.2, true],
    ['0.4 m', '0 m', '0.40 m', -0.1, true], // the child is beyond the edge
  ])(
    'offset %s, clearance %s, reach %s: gap %d m, within %s',
    (offset, clearance, reach, gap, within) => {
      const results = spot(offset, clearance, reach);
      expectClose(results['gap']?.value as number, gap, 1e-9, 1e-12);
      expect(results['within-reach']?.value).toBe(within);
    },
  );
});
