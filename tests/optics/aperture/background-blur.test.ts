import { describe, expect, it } from 'vitest';
import record from '../../../src/optics/aperture/background-blur.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

const set =
  'format=36x24, orientation=portrait, focal-length=85mm, f-number=f/4, subject-distance=2.210m';

describe('background blur', () => {
  it('is 0.344 mm on the sensor, 0.95 % of an upright frame and 14.4 mm on a backdrop 1.5 m behind', () => {
    const line = `${set}, backdrop-distance=1.5m`;
    // mD b/(s + b) = 0.85 × 1.5/3.71
    expectClose(value(record, line, 'sensor-blur'), (0.00085 * 1.5) / 3.71);
    expectClose(value(record, line, 'frame-share'), (0.85 * 1.5) / 3.71 / 36);
    expectClose(value(record, line, 'subject-blur'), (0.02125 * 1.5) / 3.71);
    expectClose(value(record, line, 'backdrop-blur'), (0.02125 * 1.5) / 2.21);
    expect(run(record, line).results['backdrop-blur']?.text).toBe('14.4 mm');
  });

  it('is a smaller share of the frame’s longer side than of its shorter', () => {
    const lying = value(
      record,
      `${set.replace('portrait', 'landscape')}, backdrop-distance=1.5m`,
      'frame-share',
    );
    expectClose(lying / value(record, `${set}, backdrop-distance=1.5m`, 'frame-share'), 36 / 24);
  });

  it('grows little with a longer lens at one framing, and more with distance behind', () => {
    const at = (f: number, b: number): number =>
      value(
        record,
        `format=36x24, orientation=portrait, focal-length=${f}mm, f-number=4, subject-distance=${f * 26}mm, backdrop-distance=${b}m`,
        'sensor-blur',
      ) * 1000;
    expect([at(50, 1.5).toFixed(3), at(135, 1.5).toFixed(3)]).toEqual(['0.268', '0.404']);
    expect((at(85, 3) / at(85, 1.5)).toFixed(2)).toBe('1.42');
  });

  it('comes to the whole pupil, times the magnification, for a backdrop at infinity', () => {
    const { results } = run(record, `${set}, backdrop-distance=infinity`);
    expectClose(results['sensor-blur']?.value as number, 0.00085);
    expectClose(results['subject-blur']?.value as number, 0.02125);
    expect(results['backdrop-blur']?.infinite).toBe(true);
  });

  it('is nothing at the child itself, and on the print grows with the print', () => {
    expect(value(record, `${set}, backdrop-distance=0m`, 'sensor-blur')).toBe(0);
    expectClose(
      value(record, `${set}, backdrop-distance=1.5m, print-height=36cm`, 'print-blur'),
      10 * value(record, `${set}, backdrop-distance=1.5m`, 'sensor-blur'),
    );
  });

  it('ahead of the child is larger than as far behind', () => {
    const { results } = run(record, `${set}, backdrop-distance=0.5m, ahead-distance=0.5m`);
    expectClose(results['foreground-blur']?.value as number, (0.00085 * 0.5) / 1.71);
    expect(results['foreground-blur']?.value).toBeGreaterThan(
      results['sensor-blur']?.value as number,
    );
    expect(() => run(record, `${set}, ahead-distance=2.21m`)).toThrow(/inside the lens/);
  });

  it('tells of what is ahead without a backdrop, and of the backdrop without a print', () => {
    const ahead = run(record, `${set}, ahead-distance=0.5m, print-height=36cm`).results;
    expectClose(ahead['foreground-blur']?.value as number, (0.00085 * 0.5) / 1.71);
    for (const id of ['sensor-blur', 'frame-share', 'subject-blur', 'print-blur', 'backdrop-blur'])
      expect(ahead[id]?.text).toBe('not given');
    const behind = run(record, `${set}, backdrop-distance=1.5m`).results;
    for (const id of ['print-blur', 'foreground-blur']) expect(behind[id]?.text).toBe('not given');
  });

  it('refuses a child at infinity', () => {
    expect(() =>
      run(
        record,
        'format=36x24, focal-length=85mm, f-number=4, subject-distance=infinity, backdrop-distance=1m',
      ),
    ).toThrow(/must be finite/);
  });

  it('takes exact marks when asked', () => {
    const ratioOf = (line: string): number =>
      value(record, line.replace('f/4', 'f/5.6'), 'sensor-blur');
    expectClose(
      ratioOf(`${set}, backdrop-distance=1.5m`) /
        ratioOf(`${set}, backdrop-distance=1.5m, marks=exact`),
      2 ** 2.5 / 5.6,
    );
  });
});
