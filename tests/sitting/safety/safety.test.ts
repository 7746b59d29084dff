import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import mains from '../../../src/sitting/safety/mains-load.ts';
import drop from '../../../src/sitting/safety/platform-drop.ts';
import recycle from '../../../src/sitting/safety/recycle-budget.ts';
import stand from '../../../src/sitting/safety/stand-stability.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../../optics/aperture/support.ts';

describe('a stand', () => {
  it('of 7 kg on three legs of 0.50 m, pulled at 0.90 m, tips at 19.1 N', () => {
    // 7 · 9.80665 · 0.25 / 0.9
    const line = 'column-mass=7kg, foot-radius=0.5m, legs=3, pull-height=0.9m';
    expect(run(stand, line).results['tipping-pull']?.text).toBe('19.1 N');
    expectClose(value(stand, line, 'restoring'), 7 * 9.80665 * 0.25);
  });

  it('with 3 kg hung 0.80 m out between two legs of a 4 kg stand needs 2.6 kg merely to balance', () => {
    const line =
      'head-mass=3kg, boom-length=0.8m, column-mass=4kg, foot-radius=0.5m, legs=3, pull-height=1m';
    // (3 · 0.55 − 4 · 0.25) / 0.25
    expectClose(value(stand, `${line}, factor=1`, 'counterweight'), 2.6);
    // Twice over: (2 · 1.65 − 1) / 0.25
    expectClose(value(stand, line, 'counterweight'), 9.2);
    expect(value(stand, line, 'tipping-pull')).toBe(0);
    expectClose(value(stand, `${line}, factor=1, ballast=2.6kg`, 'margin'), 0, 0, 1e-9);
  });

  it('in balance takes no pull at all, not the last digit of one', () => {
    // 4 kg 0.25 m outside the edge, 4 kg 0.25 m inside.
    const line =
      'head-mass=3kg, modifier-mass=1kg, boom-length=0.5m, boom-direction=60deg, column-mass=4kg, foot-radius=0.5m, legs=3, pull-height=0.9m, factor=1';
    const { results } = run(stand, line);
    expect(results['tipping-pull']?.value).toBe(0);
    expect(results['margin']?.value).toBe(0);
    expect(results['tipping-pull']?.text).toBe('0 N');
  });

  it('stands better with the boom over a leg, and the same over any leg', () => {
    const line =
      'head-mass=1kg, boom-length=0.6m, column-mass=6kg, foot-radius=0.5m, legs=3, pull-height=1m';
    const pull = (direction: number): number =>
      value(stand, `${line}, boom-direction=${direction}deg`, 'tipping-pull');
    expect(pull(0)).toBeGreaterThan(pull(60));
    expectClose(pull(120), pull(0), 1e-9);
    expectClose(pull(-60), pull(60), 1e-9);
    // Unless told otherwise the boom hangs between two legs.
    expectClose(value(stand, line, 'tipping-pull'), pull(60));
  });

  it('tips backwards over a counterweight too far out', () => {
    const line =
      'head-mass=1kg, boom-length=1m, column-mass=3kg, foot-radius=0.4m, legs=4, pull-height=1m, ballast-distance=1m';
    const pull = (ballast: number): number =>
      value(stand, `${line}, ballast=${ballast}kg`, 'tipping-pull');
    expect(pull(1)).toBeGreaterThan(0);
    expect(pull(20)).toBe(0);
  });

  it('with more legs of the same spread is harder to tip: half the radius, 0.71 of it, 0.81', () => {
    for (const [legs, share] of [
      [3, 0.5],
      [4, Math.SQRT1_2],
      [5, Math.cos(Math.PI / 5)],
    ] as const)
      expectClose(
        value(
          stand,
          `column-mass=1kg, foot-radius=1m, legs=${legs}, pull-height=1m`,
          'tipping-pull',
        ),
        9.80665 * share,
      );
    expect(() => run(stand, 'column-mass=1kg, foot-radius=1m, legs=3.5')).toThrow(/counted whole/);
  });

  it('balances exactly with the counterweight it asks for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (head, boom, factor) => {
          const line = `head-mass=${head}kg, boom-length=${boom}m, column-mass=4kg, foot-radius=0.5m, legs=3, factor=${factor}`;
          const need = value(stand, line, 'counterweight');
          const margin = value(stand, `${line}, ballast=${need}kg`, 'margin');
          if (need > 0) expectClose(margin, 0, 0, 1e-6);
          else expect(margin).toBeGreaterThan(-1e-9);
        },
      ),
    );
  });

  it('never calls anything safe', () => {
    expect(JSON.stringify(stand)).not.toMatch(/\bsafe\b/i);
  });
});

describe('a drop', () => {
  it('of 0.45 m ends at 2.97 m/s, a head 0.87 m above it at 5.09', () => {
    const results = run(drop, 'platform-height=0.45m, head-height=0.87m').results;
    expect(results['foot-speed']?.text).toBe('2.97 m/s');
    expect(results['head-speed']?.text).toBe('5.09 m/s');
  });

  it('four times as high ends twice as fast', () => {
    expectClose(
      value(drop, 'platform-height=1.2m', 'foot-speed'),
      2 * value(drop, 'platform-height=0.3m', 'foot-speed'),
    );
    expect(run(drop, 'platform-height=0.3m').results['head-speed']?.text).toBe('not given');
  });
});

describe('mains', () => {
  it('a flash of 400 J every second at 0.7 draws 571 W', () => {
    const line = 'flash-energy=400J, cycle-time=1s, efficiency=0.7, voltage=100V, rating=10A';
    expectClose(value(mains, line, 'current'), 400 / 0.7 / 100);
    expectClose(value(mains, line, 'margin'), 10 - 400 / 70);
  });

  it('the plate wins over the reckoning', () => {
    const line =
      'load=900W, flash-energy=400J, cycle-time=1s, efficiency=0.7, voltage=100V, rating=10A';
    expectClose(value(mains, line, 'current'), 9);
  });

  it('adds what is plugged in and packs each thing whole on a circuit', () => {
    // 120 V, 15 A: 1800 W a circuit. 1000 + 1000 do not fit together, though 2900 W would fit on two.
    const line = 'load=1000W; 1000W; 900W, voltage=120V, rating=15A';
    expectClose(value(mains, line, 'current'), 2900 / 120);
    expect(value(mains, line, 'circuits')).toBe(3);
    expect(value(mains, 'load=1000W; 800W; 900W, voltage=120V, rating=15A', 'circuits')).toBe(2);
    // For hours on end, where a rule asks for it: 1440 W.
    expect(
      value(mains, 'load=1500W, voltage=120V, rating=15A, continuous-share=0.8', 'circuits'),
    ).toBe(2);
    expect(
      value(mains, 'load=1440W, voltage=120V, rating=15A, continuous-share=0.8', 'circuits'),
    ).toBe(1);
  });

  it('asks for something to reckon from', () => {
    expect(() => run(mains, 'voltage=230V, rating=16A')).toThrow(/needs the watts/);
  });
});

describe('recycling', () => {
  it('is ready when the next frame comes later than it charges', () => {
    const results = run(recycle, 'flash-energy=400J, recycle-time=3s, frame-rate=20').results;
    expect(results['burst']?.text).toBe('∞');
    expect(results['wait']?.value).toBe(0);
    expectClose(results['energy']?.value as number, 400 * 20 * 60);
    expectClose(results['rate']?.value as number, 1 / 3);
  });

  it('waits for what is missing when it comes sooner, and then fires as often as it can', () => {
    const results = run(recycle, 'flash-energy=100J, recycle-time=2s, frame-rate=60/min').results;
    expect(results['burst']?.value).toBe(1);
    expectClose(results['wait']?.value as number, 1);
    expectClose(results['rate']?.value as number, 0.5);
    expectClose(results['energy']?.value as number, 100 * 1800);
  });
});
