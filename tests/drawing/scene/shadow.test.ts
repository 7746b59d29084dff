import { expect, it } from 'vitest';
import { castBy } from '~/drawing/scene/shadow.ts';

it('doubles a body halfway between a point and the backdrop', () => {
  const cast = castBy(
    [
      [-1, 0],
      [-1, 0],
    ],
    [
      [0, -0.12],
      [0, 0.12],
    ],
    1,
  );
  expect(cast?.full?.map((x) => Number(x.toFixed(9)))).toEqual([-0.24, 0.24]);
  expect(cast?.edge).toEqual(cast?.full);
});

it('softens the edge by the source’s breadth times the way behind over the way before', () => {
  // A source 0.6 m wide, 2 m before the edge, the wall 0.5 m behind it: 0.6 · 0.5/2 = 0.15 m.
  const cast = castBy(
    [
      [-2, -0.3],
      [-2, 0.3],
    ],
    [
      [0, -0.5],
      [0, 0.5],
    ],
    0.5,
  );
  const [full = 0] = cast?.full ?? [];
  expect((cast?.edge[0] ?? 0) - full).toBeCloseTo(-0.15, 9);
});

it('has no core where the source is wide and the wall far', () => {
  const cast = castBy(
    [
      [-1, -1],
      [-1, 1],
    ],
    [
      [0, -0.12],
      [0, 0.12],
    ],
    2,
  );
  expect(cast?.full).toBeUndefined();
  // From 1 past −0.12 to the wall: 1 − 3 · 1.12.
  expect(cast?.edge[0]).toBeCloseTo(-2.36, 9);
});

it('casts none on the backdrop from behind the body', () => {
  const body = [
    [0, -0.12],
    [0, 0.12],
  ] as const;
  expect(
    castBy(
      [
        [0.5, 0],
        [0.5, 0],
      ],
      body,
      2,
    ),
  ).toBeUndefined();
  expect(
    castBy(
      [
        [-1, 0],
        [-1, 0],
      ],
      body,
      -0.5,
    ),
  ).toBeUndefined();
});
