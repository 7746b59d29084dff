import { surface } from './form.ts';

/** A bent sheet of points, row by row; each point holds x, y, z, its normal, and two shares (hair and flush). */
export interface Mesh {
  readonly columns: number;
  readonly rows: number;
  readonly points: Float32Array;
  /** What it is made of. */
  readonly cloth: boolean;
  /** Whether it turns with the head. */
  readonly turns: boolean;
}
/** Numbers a point holds. */
export const EACH = 8;

/** Normals from the neighbours, outwards: rows go up, columns go round to the left as seen from outside. */
const withNormals = (points: Float32Array, columns: number, rows: number): Float32Array => {
  const at = (column: number, row: number): number => (row * columns + column) * EACH;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const here = at(column, row);
      const [w, e] = [at(Math.max(0, column - 1), row), at(Math.min(columns - 1, column + 1), row)];
      const [s, n] = [at(column, Math.max(0, row - 1)), at(column, Math.min(rows - 1, row + 1))];
      const across = [0, 1, 2].map((i) => (points[e + i] ?? 0) - (points[w + i] ?? 0));
      const along = [0, 1, 2].map((i) => (points[n + i] ?? 0) - (points[s + i] ?? 0));
      const [ax = 0, ay = 0, az = 0] = across;
      const [bx = 0, by = 0, bz = 0] = along;
      const normal = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx] as const;
      const length = Math.hypot(...normal) || 1;
      for (let i = 0; i < 3; i++) points[here + 3 + i] = (normal[i] ?? 0) / length;
    }
  return points;
};

/** Places from −1 to 1 that stand closer where `weight` is larger. */
const spaced = (count: number, weight: (t: number) => number): number[] => {
  const fine = 2000;
  const sums = [0];
  for (let i = 0; i < fine; i++) sums.push((sums[i] ?? 0) + weight((2 * (i + 0.5)) / fine - 1));
  const total = sums[fine] ?? 1;
  let i = 0;
  return Array.from({ length: count }, (_, k) => {
    const wanted = (total * k) / (count - 1);
    while (i < fine - 1 && (sums[i + 1] ?? 0) < wanted) i++;
    const [a = 0, b = 1] = [sums[i], sums[i + 1]];
    return (2 * (i + (wanted - a) / (b - a))) / fine - 1;
  });
};

/** The head, closest about the features. */
const head = (n: number, fineness: number): Mesh => {
  const [columns, rows] = [Math.round(200 * fineness), Math.round(170 * fineness)];
  const arounds = spaced(columns, (t) => (Math.abs(t) < 0.3 ? 4 : Math.abs(t) < 0.6 ? 2 : 1));
  const ups = spaced(rows, (t) => (t > -0.62 && t < 0.2 ? 4.5 : t > 0 && t < 0.6 ? 2.5 : 1));
  const points = new Float32Array(columns * rows * EACH);
  ups.forEach((up, row) =>
    arounds.forEach((around, column) => {
      const { x, y, z, hair, flush } = surface(around * Math.PI, up * 1.56, n);
      points.set([x, y, z, 0, 0, 0, hair, flush], (row * columns + column) * EACH);
    }),
  );
  return { columns, rows, points: withNormals(points, columns, rows), cloth: false, turns: true };
};

type Round = (around: number, up: number) => readonly [number, number, number];

/** A plain round part: `of` says where it is for turns round (−π to π) and heights (−1 to 1). */
const part = (
  [columns, rows]: readonly [number, number],
  of: Round,
  { cloth = false, turns = false, flush = 0 }: { cloth?: boolean; turns?: boolean; flush?: number },
): Mesh => {
  const points = new Float32Array(columns * rows * EACH);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const around = ((2 * column) / (columns - 1) - 1) * Math.PI;
      const place = of(around, (2 * row) / (rows - 1) - 1);
      points.set([...place, 0, 0, 0, 0, flush], (row * columns + column) * EACH);
    }
  return { columns, rows, points: withNormals(points, columns, rows), cloth, turns };
};

/** An ear: a shell, hollow outside, standing off the head and a little back. */
const ear =
  (side: 1 | -1): Round =>
  (around, up) => {
    const lat = (up * Math.PI) / 2;
    const [u, v, w] = [
      Math.cos(lat) * Math.sin(around),
      Math.sin(lat),
      Math.cos(lat) * Math.cos(around),
    ];
    const rim = Math.hypot(u, v);
    const hollow =
      w > 0
        ? 5 * Math.max(0, 1 - (rim / 0.78) ** 2) - 2 * Math.max(0, 1 - ((rim - 0.86) / 0.2) ** 2)
        : 0;
    // Its own plane: u forward and back, v up, w out; then turned to stand off the head.
    const [back, high, out] = [u * 13 * (1 - 0.3 * Math.max(0, -v)), v * 22, w * 5.5 - hollow];
    const lean = 0.36;
    const x = 69 + out * Math.cos(lean) + back * Math.sin(lean);
    const z = -12 + out * Math.sin(lean) - back * Math.cos(lean) - 0.12 * high;
    return [side * x, -12 + high, z];
  };

/** Mirrored parts run the other way round, so that their outside stays outside. */
const mirrored =
  (of: Round): Round =>
  (around, up) =>
    of(-around, up);

const neck: Round = (around, up) => {
  const y = -106 + 60 * up;
  const waist = 31 + 9 * Math.max(0, -up) ** 2;
  return [waist * Math.sin(around), y, -14 + 0.08 * (y + 60) + (waist + 2) * Math.cos(around)];
};

const shoulders: Round = (around, up) => {
  const lat = (up * Math.PI) / 2;
  const c = Math.max(Math.cos(lat), 0) ** 0.75;
  return [132 * c * Math.sin(around), -164 + 62 * Math.sin(lat), -16 + 58 * c * Math.cos(around)];
};

/** A rolled collar round the neck. */
const collar: Round = (around, up) => {
  const roll = up * Math.PI;
  const r = 43 + 8 * Math.cos(roll);
  return [
    1.06 * r * Math.sin(around),
    -107 + 9 * Math.sin(roll) - 7 * Math.cos(around),
    -15 + r * Math.cos(around),
  ];
};

/** The whole bust: head, ears, neck, and a plain knitted jumper. */
export const bust = (n: number, fineness = 1): readonly Mesh[] => [
  head(n, fineness),
  part([25, 21], ear(1), { turns: true, flush: 0.35 }),
  part([25, 21], mirrored(ear(-1)), { turns: true, flush: 0.35 }),
  part([40, 12], neck, {}),
  part([60, 24], shoulders, { cloth: true }),
  part([48, 16], collar, { cloth: true }),
];
