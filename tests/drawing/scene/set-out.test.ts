import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pen } from '~/drawing/pen.ts';
import { bar } from '~/drawing/scale.ts';
import { movable } from '~/drawing/scene/movable.ts';
import type { Light, Place, Scene, Source } from '~/drawing/scene/scene.ts';
import { setOut } from '~/drawing/scene/set-out.ts';
import { placesTable } from '~/drawing/scene/table.ts';
import type { Space } from '~/drawing/scene/views.ts';
import type { Sheet } from '~/drawing/sheet.ts';
import { overlaps } from '../overlaps.ts';
import { faults, paths, scaleOf, texts, wide, high } from '../sheets.ts';

const degrees = Math.PI / 180;
const space: Space = { columns: [4, 356], side: [6, 160], plan: [172, 382] };
const place = (aside: number, behind: number, height: number): Place => ({ aside, behind, height });
const key: Light = {
  name: 'key',
  source: 'softbox',
  at: place(0.735, -0.735, 1.21),
  aim: place(0, 0, 0.61),
  width: 0.9,
  beams: [],
};
const harbour: Scene = {
  room: { front: -3.2, back: 1.8, half: 1.8, ceiling: 2.6 },
  backdrop: { behind: 1.5, half: 1.35, top: 2.4 },
  platform: { front: -0.4, back: 0.4, half: 0.5, top: 0.2 },
  sitter: { kind: 'child', seat: place(0, 0, 0.2) },
  camera: { at: place(0, -2.21, 0.61), across: 15.4 * degrees, up: 23 * degrees, upright: true },
  lights: [
    key,
    {
      name: 'rim light',
      source: 'grid',
      at: place(-0.9, 1.2, 1.6),
      aim: place(0, 0, 0.7),
      width: 0.18,
      beams: [{ angle: 20 * degrees }],
    },
  ],
  cards: [{ name: 'fill card', at: place(-0.6, -0.1, 0.6), faces: place(0, 0, 0.6), width: 1 }],
  shadows: ['key'],
};

const sheetFor = (scene: Scene): { sheet: Sheet; scale: number } => {
  const on = pen({});
  const set = setOut(on, scene, space);
  set.write();
  bar(on, 8, 400, set.scale);
  const { head, rows } = placesTable(scene, on.length);
  return {
    sheet: { width: 360, height: 406, marks: on.marks, says: 'A set.', table: { head, rows } },
    scale: set.scale,
  };
};

describe('a set laid out', () => {
  it('names everything in both views', () => {
    const { sheet } = sheetFor(harbour);
    for (const name of ['child', 'camera', 'key', 'rim light', 'fill card', 'backdrop'])
      expect(texts(sheet).filter((text) => text === name)).toHaveLength(2);
    expect(faults(sheet)).toEqual([]);
    expect(overlaps(sheet)).toEqual([]);
  });

  it('is to the scale of its bar: room 5.0 by 3.6 by 2.6 m, backdrop 2.7 m wide', () => {
    const { sheet, scale } = sheetFor(harbour);
    expect(scaleOf(sheet)).toBeCloseTo(scale, 6);
    const [side = [], plan = []] = paths(sheet, 'ground', true);
    expect(wide(side) / scale).toBeCloseTo(5, 3);
    expect(high(side) / scale).toBeCloseTo(2.6, 3);
    const rooms = paths(sheet, 'ground', true).filter((ring) => wide(ring) / scale > 4.9);
    expect(rooms).toHaveLength(2);
    expect(high(rooms[1] ?? plan) / scale).toBeCloseTo(3.6, 3);
    const cloth = paths(sheet, 'object').filter(
      (line) => line.length === 2 && Math.abs(wide(line)) < 0.01 && high(line) / scale > 1.2,
    );
    expect(cloth.map((line) => Number((high(line) / scale).toFixed(2)))).toEqual([2.4, 2.7]);
  });

  it('shows a card edge on as a line, and turned towards the reader as round', () => {
    const { sheet, scale } = sheetFor({ ...harbour, lights: [] });
    const rings = paths(sheet, 'object').filter((ring) => ring.length === 32);
    // The card faces 9.5° off the line across, so from above it is edge on.
    expect(rings).toHaveLength(1);
    expect(high(rings[0] ?? []) / scale).toBeCloseTo(1, 2);
    expect(wide(rings[0] ?? []) / scale).toBeCloseTo(0.6 / Math.hypot(0.6, 0.1), 2);
  });

  it('opens a grid’s beam by what it spreads: 20 degrees, seen from above', () => {
    const scene: Scene = {
      lights: [
        {
          name: 'light',
          source: 'grid',
          at: place(0, -1, 1),
          aim: place(0, 1, 1),
          width: 0,
          beams: [{ angle: 20 * degrees }],
        },
      ],
      backdrop: { behind: 1 },
    };
    const { sheet, scale } = sheetFor(scene);
    const [, plan = []] = paths(sheet, 'light', true);
    // 2 · 2 m · tan 10° = 0.705 m on a backdrop 2 m off.
    expect(high(plan) / scale).toBeCloseTo(0.7053, 3);
  });

  it('throws the key’s shadow only where the light comes from in front', () => {
    const full = paths(sheetFor(harbour).sheet, 'shade');
    expect(full.length).toBeGreaterThan(0);
    const behind = { ...harbour, lights: [{ ...key, at: place(0.7, 0.7, 1.2) }] };
    expect(paths(sheetFor(behind).sheet, 'shade')).toEqual([]);
  });

  it('draws every kind of source, and the rabbit, whole and with words that do not meet', () => {
    const sources: Source[] = [
      'bare bulb',
      'standard reflector',
      'grid',
      'beauty dish',
      'softbox',
      'strip',
      'umbrella',
      'window',
    ];
    const length = fc.double({ min: -4, max: 4, noNaN: true });
    const light = fc.record({
      name: fc.constantFrom('key', 'fill', 'rim light', 'background light'),
      source: fc.constantFrom(...sources),
      at: fc.record({ aside: length, behind: length, height: length }),
      aim: fc.record({ aside: length, behind: length, height: length }),
      width: fc.double({ min: 0, max: 2, noNaN: true }),
      beams: fc.array(
        fc.record({
          angle: fc.double({ min: 0.01, max: 2 * Math.PI, noNaN: true }),
          name: fc.constant('beam'),
        }),
        { maxLength: 2 },
      ),
      contours: fc.record({
        from: fc.double({ min: 0.01, max: 5, noNaN: true }),
        stops: fc.constant([0, 1, 2]),
      }),
    });
    fc.assert(
      fc.property(fc.array(light, { minLength: 1, maxLength: 3 }), fc.boolean(), (lights, room) => {
        const scene: Scene = {
          ...harbour,
          lights,
          sitter: { kind: room ? 'child' : 'rabbit', seat: place(0, 0, 0.2) },
          shadows: lights.map(({ name }) => name),
        };
        const { sheet } = sheetFor(
          room
            ? scene
            : (Object.fromEntries(
                Object.entries(scene).filter(([key]) => key !== 'room'),
              ) as unknown as Scene),
        );
        expect(faults(sheet)).toEqual([]);
        expect(overlaps(sheet)).toEqual([]);
      }),
    );
  });

  it('says where everything stands', () => {
    const { rows } = placesTable(harbour, (metres) => `${metres.toFixed(2)} m`);
    expect(rows).toContainEqual(['key', '-0.73 m', '0.73 m', '1.21 m']);
    expect(rows.map(([name]) => name)).toEqual([
      'camera',
      'child',
      'key',
      'rim light',
      'fill card',
    ]);
  });
});

describe('a handle', () => {
  const { plan, side } = setOut(pen({}), harbour, space);
  if (!plan || !side) throw new Error('Two views were asked for.');
  const named = { id: 'key', name: 'key', says: '' };
  const all = [-20, 20] as const;

  it('set down where it stands means the place it has', () => {
    const at = place(0.73, -0.74, 1.21);
    const over = movable(plan, named, at, { behind: all, other: all }, (to) => ({ ...to }));
    expect(over.set(over.x, over.y)).toEqual(at);
    const beside = movable(side, named, at, { other: all }, (to) => ({ ...to }));
    expect(beside.set(beside.x + 50, beside.y)).toEqual(at);
    expect(beside.ways).toBe('up');
  });

  it('half a metre to the right on the sheet is half a metre farther behind', () => {
    const at = place(0.5, -1, 1);
    const one = movable(plan, named, at, { behind: all, other: all }, (to) => ({ ...to }));
    expect(one.set(one.x + 0.5 * one.scale, one.y - 0.25 * one.scale)).toEqual(
      place(0.25, -0.5, 1),
    );
    const up = movable(side, named, at, { behind: all, other: all }, (to) => ({ ...to }));
    expect(up.set(up.x, up.y - 0.5 * up.scale)).toEqual(place(0.5, -1, 1.5));
  });

  it('stops at its ends, and goes by whole centimetres', () => {
    const one = movable(plan, named, place(0, 0, 0), { behind: [-1, 0.5] }, (to) => ({ ...to }));
    expect(one.set(one.x + 900, one.y)).toEqual(place(0, 0.5, 0));
    expect(one.set(one.x + 0.1234 * one.scale, one.y + 40)).toEqual(place(0, 0.12, 0));
    expect(one.ways).toBe('across');
  });
});
