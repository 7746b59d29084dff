import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawThreeLights, sceneOf, type ThreeLights } from '~/drawing/three-lights.ts';
import { deg, m, mm } from '~/formula/quantities.ts';
import { placeOfLight, start } from '~/optics/harbour.ts';
import type { Place } from '~/drawing/scene/scene.ts';
import { overlaps } from './overlaps.ts';
import { faults, high, paths, scaleOf, texts, wide, written } from './sheets.ts';

const harbour: ThreeLights = {
  room: { length: m(5), width: m(3.6), ceiling: m(2.6), clearance: m(0.3) },
  backdrop: { behind: m(1.5), width: m(2.7), height: m(2.4) },
  platform: { height: m(0.2), depth: m(1.6) },
  camera: {
    distance: m(2.21),
    height: m(0.61),
    f: mm(85),
    format: { width: mm(36), height: mm(24) },
    orientation: 'portrait',
  },
  key: { distance: m(1.2), azimuth: deg(45), elevation: deg(30), size: m(0.9) },
  card: { size: m(1), distance: m(0.6) },
  rim: {
    behind: m(placeOfLight('rim-behind')),
    aside: m(placeOfLight('rim-aside')),
    height: m(placeOfLight('rim-height')),
    angle: deg(20),
  },
  glow: {
    aim: m(placeOfLight('glow-aim')),
    height: m(placeOfLight('glow-height')),
    distance: m(2),
    tilt: deg(30),
    angle: deg(20),
  },
  opening: m(0.18),
};
const sheet = drawThreeLights(harbour);
const far = (a: Place, b: Place): number =>
  Math.hypot(a.aside - b.aside, a.behind - b.behind, a.height - b.height);
const light = (name: string, given = harbour) => {
  const found = sceneOf(given).lights.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};

describe('the three lights’ places', () => {
  it('puts the key 45° round and 30° up, 1.2 m from the face', () => {
    const { at, aim } = light('key');
    // 1.2 m · cos 30° · sin 45° = 0.735 m each way, 1.2 m · sin 30° = 0.60 m over the eyes.
    expect([at.aside, at.behind, at.height].map((x) => Number(x.toFixed(3)))).toEqual([
      0.735, -0.735, 1.21,
    ]);
    expect(far(at, aim)).toBeCloseTo(1.2, 9);
    expect(aim.height).toBe(start('camera-height'));
  });

  it('puts the card on the other side, whichever side the key is on', () => {
    const card = (given: ThreeLights) => sceneOf(given).cards?.[0]?.at.aside;
    expect(card(harbour)).toBe(-0.6);
    expect(card({ ...harbour, key: { ...harbour.key, azimuth: deg(-45) } })).toBe(0.6);
  });

  it('aims the background light so far along its axis, so far off square', () => {
    const { at, aim } = light('background light');
    expect(far(at, aim)).toBeCloseTo(2, 9);
    expect((Math.atan2(at.aside - aim.aside, aim.behind - at.behind) * 180) / Math.PI).toBeCloseTo(
      30,
      9,
    );
    expect(at.height).toBe(aim.height);
  });

  it('leaves the rim light’s head room before the quay: 40 cm behind its front', () => {
    const { at, aim } = light('rim light');
    const reach = far(at, aim);
    expect(reach).toBeCloseTo(1.682, 3);
    const back = at.behind + (0.4 * (at.behind - aim.behind)) / reach;
    expect(back).toBeLessThan(1.5);
    // The place the rim light's own lesson begins with would put it through the quay.
    expect(1.4 + (0.4 * 1.4) / Math.hypot(1.4, 0.9, 0.9)).toBeGreaterThan(1.5);
  });

  it('keeps every light in the room and out of the picture', () => {
    const { camera, lights, room } = sceneOf(harbour);
    for (const { at, name } of lights) {
      const depth = at.behind + 2.21;
      const out =
        Math.abs(at.aside) > depth * Math.tan((camera?.across ?? 0) / 2) + 0.09 ||
        Math.abs(at.height - 0.61) > depth * Math.tan((camera?.up ?? 0) / 2) + 0.09;
      expect(`${name} ${out}`).toBe(`${name} true`);
      expect(at.behind).toBeLessThan(room?.back ?? 0);
      expect(Math.abs(at.aside)).toBeLessThan(room?.half ?? 0);
    }
  });
});

describe('the three lights, drawn', () => {
  it('names everything in both views, and no word lies over another', () => {
    for (const name of [
      'camera',
      'knitted rabbit',
      'key',
      'card',
      'rim light',
      'background light',
      'glow',
      'backdrop',
    ])
      expect(texts(sheet).filter((text) => text === name)).toHaveLength(2);
    expect(faults(sheet)).toEqual([]);
    expect(overlaps(sheet)).toEqual([]);
  });

  it('is to the scale of its bar: the room, the card as a disc from the side, the glow on the quay', () => {
    const scale = scaleOf(sheet);
    const [side = [], plan = []] = paths(sheet, 'ground', true).filter(
      (ring) => wide(ring) / scale > 4.9,
    );
    expect([wide(side), high(side), wide(plan), high(plan)].map((x) => x / scale)).toEqual([
      expect.closeTo(5, 3),
      expect.closeTo(2.6, 3),
      expect.closeTo(5, 3),
      expect.closeTo(3.6, 3),
    ]);
    const card = paths(sheet, 'object').find((ring) => ring.length === 32);
    expect([wide(card ?? []) / scale, high(card ?? []) / scale]).toEqual([
      expect.closeTo(1, 2),
      expect.closeTo(1, 2),
    ]);
    // A beam of 20° that meets the quay 30° off square, 2.0 m on: 0.709 m high, 0.823 m along it.
    expect(paths(sheet, 'emphasis').map((line) => Number((high(line) / scale).toFixed(2)))).toEqual(
      [0.71, 0.82],
    );
  });

  it('lists every place and its distance', () => {
    expect(sheet.table.rows.map((row) => [row[0], row[4]])).toEqual([
      ['camera', '2.21 m'],
      ['knitted rabbit', ''],
      ['key', '1.20 m'],
      ['rim light', '1.68 m'],
      ['background light', '2.00 m'],
      ['card', '0.60 m'],
    ]);
    expect(sheet.says).toContain('1.20 m from the face to camera-right');
    expect(sheet.says).toContain('a pool 0.823 m by 0.709 m');
  });

  it('is drawn whole wherever the lights stand', () => {
    const size = (least: number, most: number): fc.Arbitrary<number> =>
      fc.double({ min: least, max: most, noNaN: true });
    fc.assert(
      fc.property(
        size(-150, 150),
        size(-20, 80),
        size(0.4, 2),
        size(-1, 1.4),
        size(-60, 60),
        fc.constantFrom('metric' as const, 'imperial' as const),
        (azimuth, elevation, distance, behind, tilt, system) => {
          const moved: ThreeLights = {
            ...harbour,
            key: {
              ...harbour.key,
              azimuth: deg(azimuth),
              elevation: deg(elevation),
              distance: m(distance),
            },
            rim: { ...harbour.rim, behind: m(behind) },
            glow: { ...harbour.glow, tilt: deg(tilt) },
          };
          expect(faults(drawThreeLights(moved, { system }))).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('looks as it was last looked at', () => {
    expect(written(sheet)).toMatchSnapshot();
  });
});
