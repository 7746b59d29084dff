import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deg, m } from '../../../src/formula/quantities.ts';
import backdrop from '../../../src/optics/light/backdrop-exposure.ts';
import beam, { spotOf } from '../../../src/optics/light/beam-spread.ts';
import feathering, { exponent } from '../../../src/optics/light/feathering.ts';
import rim from '../../../src/optics/light/rim-light.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../aperture/support.ts';

describe('beam spread', () => {
  it('20 degrees at 2.0 m throw 0.705 m', () => {
    // 4 tan 10°
    expect(run(beam, 'angle=20deg, distance=2m').results['width']?.text).toBe('0.705 m');
    expectClose(value(beam, 'angle=20deg, distance=2m', 'offset'), 0, 0, 1e-12);
  });

  it('30 degrees off square the spot is 0.823 by 0.709 m, its middle 42 mm beyond the aim', () => {
    const results = run(beam, 'angle=20deg, distance=2m, tilt=30deg').results;
    expect(results['length']?.text).toBe('0.823 m');
    expect(results['width']?.text).toBe('0.709 m');
    expect(results['offset']?.text).toBe('42 mm');
  });

  it('every edge of the ellipse lies on the cone, at whatever tilt', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (angle, tilt, round) => {
          const spot = spotOf({ angle: deg(angle), D: m(2), tilt: deg(tilt) });
          const along = spot.offset + (spot.length / 2) * Math.cos(round);
          const across = (spot.width / 2) * Math.sin(round);
          // The backdrop leans away by the tilt: a step along it goes sin(tilt) farther down the axis.
          const [z, x] = [
            2 + along * Math.sin((tilt * Math.PI) / 180),
            along * Math.cos((tilt * Math.PI) / 180),
          ];
          expectClose(Math.hypot(x, across) / z, Math.tan((angle * Math.PI) / 360), 1e-6);
        },
      ),
    );
  });

  it('is never narrower than the opening', () => {
    const line = 'angle=10deg, distance=0.3m, opening=0.18m';
    expectClose(value(beam, line, 'width'), 0.18);
    expectClose(value(beam, line, 'length'), 0.18);
  });

  it('runs along the backdrop when its far side never meets it', () => {
    const results = run(beam, 'angle=40deg, distance=2m, tilt=75deg, wanted-width=1m').results;
    expect(results['length']?.text).toBe('∞');
    expect(results['width']?.text).toBe('∞');
  });

  it('loses one stop to the edge of a beam angle and 3.32 to that of a field angle', () => {
    expect(value(beam, 'angle=20deg, distance=2m, definition=beam', 'edge-stops')).toBe(1);
    expectClose(
      value(beam, 'angle=20deg, distance=2m, definition=field', 'edge-stops'),
      Math.log2(10),
    );
    expect(run(beam, 'angle=20deg, distance=2m').results['edge-stops']?.text).toBe('not given');
  });

  it('says where, or with which beam, the wanted spot is made', () => {
    const line = 'angle=20deg, distance=2m, tilt=30deg, wanted-width=1m';
    const away = value(beam, line, 'distance-for-spot');
    expectClose(value(beam, `angle=20deg, distance=${away}m, tilt=30deg`, 'width'), 1);
    const other = value(beam, line, 'angle-for-spot');
    expectClose(value(beam, `angle=${other}rad, distance=2m, tilt=30deg`, 'width'), 1);
  });
});

describe('backdrop exposure', () => {
  it('a key 1.0 m from the child spills −2.64 stops on a backdrop 1.5 m beyond', () => {
    const line = 'key-distance=1m, backdrop-distance=1.5m';
    // 2 log2(1/2.5)
    expect(run(backdrop, line).results['against-face']?.text).toBe('−2.64 stops');
    expect(value(backdrop, line, 'spot-over-spill')).toBe(0);
    expect(run(backdrop, line).results['tone']?.text).toBe('not given');
  });

  it('white of 90 % is 2.32 stops over 18 % grey in the same light', () => {
    const line = 'key-distance=1m, backdrop-distance=0m';
    expectClose(value(backdrop, `${line}, reflectance=0.9`, 'tone'), Math.log2(5));
    expectClose(value(backdrop, `${line}, reflectance=0.18`, 'tone'), 0, 0, 1e-12);
  });

  it('adds the spot to the spill, and loses to the gel', () => {
    // Spill (1/2)² = 0.25; spot 2^(1 − 0.5 · 2)… one stop up, a stop of gel, at the same distance: 1.
    const line =
      'key-distance=1m, backdrop-distance=1m, light-distance=1m, light-stops=1, gel-loss=1';
    expectClose(value(backdrop, line, 'against-face'), Math.log2(1.25));
    expectClose(value(backdrop, line, 'spot-over-spill'), Math.log2(5));
  });

  it('wants a backdrop light’s distance and strength together', () => {
    expect(() => run(backdrop, 'key-distance=1m, backdrop-distance=1m, light-distance=1m')).toThrow(
      /at most one of/,
    );
  });
});

describe('rim light', () => {
  const at = (line: string): string =>
    `format=36x24, orientation=portrait, focal-length=85mm, camera-distance=2.21m, set-depth=1.6m, light-stops=0, ${line}`;
  const standing = 'light-behind=1.2m, light-aside=0.9m, light-height=0.9m';

  it('stands 53.1 degrees behind at 0.9 m aside and 1.2 m back, whichever side', () => {
    for (const aside of ['0.9m', '-0.9m'])
      expect(
        run(rim, at(`light-behind=1.2m, light-aside=${aside}, light-height=0.5m, beam-angle=20deg`))
          .results['behind-angle']?.text,
      ).toBe('53.1°');
  });

  it('a 20 degree grid reaches the child alone; a 70 degree reflector the whole set and the lens', () => {
    const narrow = run(rim, at(`${standing}, beam-angle=20deg`)).results;
    const wide = run(rim, at(`${standing}, beam-angle=70deg`)).results;
    // From the light to the back edge (0, 0, −0.8): cos = (0.81 + 0.81 + 1.2·0.4)/(1.7493 · 1.3342): 25.9° off.
    // To the front edge (0, 0, 0.8): cos = (1.62 + 1.2·2.0)/(1.7493 · 2.3707): 14.3° off.
    // To the lens (0, 0, 2.21): cos = (1.62 + 1.2·3.41)/(1.7493 · 3.6405): 26.1° off.
    expect(
      [narrow['hits-back'], narrow['hits-mid'], narrow['hits-fore'], narrow['strikes-lens']].map(
        (one) => one?.value,
      ),
    ).toEqual([false, true, false, false]);
    expect(
      [wide['hits-back'], wide['hits-mid'], wide['hits-fore'], wide['strikes-lens']].map(
        (one) => one?.value,
      ),
    ).toEqual([true, true, true, true]);
    const between = run(rim, at(`${standing}, beam-angle=52deg`)).results;
    expect(
      [between['hits-back'], between['hits-fore'], between['strikes-lens']].map(
        (one) => one?.value,
      ),
    ).toEqual([true, true, false]);
  });

  it('is in the frame only where the frame is wide and high enough so far back', () => {
    // Upright 85 mm frame at 2.21 m: 0.60 × 0.90 m; 1.2 m farther it is 3.41/2.21 as large: half sides 0.463 and 0.694 m.
    const inFrame = (aside: string, height: string): unknown =>
      value(
        rim,
        at(`light-behind=1.2m, light-aside=${aside}, light-height=${height}, beam-angle=20deg`),
        'in-frame',
      );
    expect(inFrame('0.46m', '0.69m')).toBe(true);
    expect(inFrame('0.47m', '0.69m')).toBe(false);
    expect(inFrame('-0.46m', '0.70m')).toBe(false);
  });

  it('twice as far as the key it is two stops weaker', () => {
    const line = at(
      'light-behind=2m, light-aside=0m, light-height=0m, beam-angle=20deg, key-distance=1m',
    );
    expectClose(value(rim, line, 'over-key'), -2);
    expect(value(rim, at(`${standing}, beam-angle=20deg`), 'over-key')).toBe(0);
  });

  it('refuses a light that stands in the child', () => {
    expect(() =>
      run(rim, at('light-behind=0m, light-aside=0m, light-height=0m, beam-angle=20deg')),
    ).toThrow(/stands in the child/);
  });
});

describe('feathering', () => {
  const set = 'beam-angle=60deg, near-distance=1.2m, far-distance=1.6m, angle-between=20deg';

  it('a 60 degree full beam falls as the 4.82nd power of the cosine', () => {
    // ln 0.5 / ln cos 30° = 0.6931/0.1438
    expect(exponent(deg(60)).toFixed(2)).toBe('4.82');
  });

  it('turned as far as it says, both get the same', () => {
    const turn = value(feathering, set, 'turn');
    expectClose(value(feathering, `${set}, aim=${turn}rad`, 'after'), 0, 0, 1e-9);
  });

  it('aimed at the nearer child it gives the farther less by the law and by the beam', () => {
    // 2 log2(4/3) + 4.8188 · −log2 cos 20° = 0.830 + 0.432
    expect(value(feathering, set, 'before').toFixed(2)).toBe('1.26');
    expect(value(feathering, set, 'after')).toBe(value(feathering, set, 'before'));
  });

  it('by the ceiling: 2ρd²/((n + 1)h²) of the straight beam', () => {
    const line = `${set}, ceiling-distance=1.9m, reflectance=0.8`;
    // 2 · 0.8 · 1.44 / (5.8188 · 3.61) = 0.1097: 3.19 stops
    expectClose(value(feathering, line, 'bounce'), 3.189, 1e-3);
    expect(run(feathering, set).results['bounce']?.text).toBe('not given');
  });

  it('says when the beam reaches neither', () => {
    expect(run(feathering, `${set}, aim=-80deg`).results['after']?.text).toBe('∞');
    expect(() =>
      run(
        feathering,
        'beam-angle=60deg, near-distance=1m, far-distance=2m, angle-between=0.1deg, aim=-89.95deg',
      ),
    ).toThrow();
  });
});
