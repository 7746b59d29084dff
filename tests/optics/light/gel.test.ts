import { describe, expect, it } from 'vitest';
import gel from '../../../src/optics/light/gel.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../aperture/support.ts';

describe('gels', () => {
  it('half orange on a flash of 5500 K leaves 3440 K', () => {
    // 181.8 + 109 = 290.8 mired
    expectClose(value(gel, 'gel-shift=109mired', 'temperature'), 1e6 / (1e6 / 5500 + 109));
    expect(run(gel, 'gel-shift=109mired').given['source']).toBe('5500 K');
  });

  it('from 3200 to 5500 K takes −131 mired', () => {
    expectClose(value(gel, 'source=3200K, target=5500K', 'shift') * 1e6, 1e6 / 5500 - 1e6 / 3200);
    expectClose(value(gel, 'source=3200K, target=5500K', 'temperature'), 5500);
  });

  it('shifts add up: two quarters of orange on top of each other', () => {
    const once = value(gel, 'source=5500K, gel-shift=64mired', 'temperature');
    expectClose(
      value(gel, `source=${once}K, gel-shift=64mired`, 'temperature'),
      value(gel, 'source=5500K, gel-shift=128mired', 'temperature'),
    );
  });

  it('a gel that lets a quarter through costs two stops and four times the power', () => {
    const line = 'gel-shift=0mired, transmission=0.25, power=1/8';
    expectClose(value(gel, line, 'loss'), 2);
    expectClose(value(gel, line, 'power-needed'), 0.5);
    expect(value(gel, 'gel-shift=0mired', 'loss')).toBe(0);
  });

  it('refuses a gel bluer than blue, and says how blue it may be', () => {
    expect(() => run(gel, 'source=5500K, gel-shift=-200mired')).toThrow(/more than -182 mired/);
    expect(() => run(gel, 'gel-shift=0mired, target=3200K')).toThrow(/exactly one of/);
  });
});
