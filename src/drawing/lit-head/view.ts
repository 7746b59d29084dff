import { EACH, type Mesh } from './mesh.ts';

/** What the frame shows, in millimetres: its middle's height, and its width and height. */
export const FRAME = { middle: -7, width: 200, height: 250 } as const;

/** What a pixel shows. */
export const KIND = { none: 0, body: 1, cloth: 2, sclera: 3, iris: 4, pupil: 5, lash: 6 } as const;

/**
 * The head as the camera sees it, pixel by pixel: depth, normal and what is there. It holds for one turn of the head;
 * light is another matter. The camera is level with the eyes and far away (its perspective is left out).
 */
export interface View {
  readonly width: number;
  readonly height: number;
  /** Pixels a millimetre. */
  readonly scale: number;
  /** Millimetres towards the camera; far behind where there is nothing. */
  readonly z: Float32Array;
  readonly nx: Float32Array;
  readonly ny: Float32Array;
  readonly nz: Float32Array;
  readonly hair: Float32Array;
  readonly flush: Float32Array;
  readonly kind: Uint8Array;
  /** How much of an even light from all round reaches it, 0 to 1. */
  readonly open: Float32Array;
}

/** Where nothing is. */
export const NOWHERE = -1e4;

export const column = ({ width, scale }: Pick<View, 'width' | 'scale'>, x: number): number =>
  width / 2 + x * scale;
export const row = ({ height, scale }: Pick<View, 'height' | 'scale'>, y: number): number =>
  height / 2 - (y - FRAME.middle) * scale;

/** An empty view of so many pixels across. */
export const blank = (width: number): View => {
  const height = Math.round((width * FRAME.height) / FRAME.width);
  const size = width * height;
  const plane = (): Float32Array => new Float32Array(size);
  return {
    width,
    height,
    scale: width / FRAME.width,
    z: plane().fill(NOWHERE),
    nx: plane(),
    ny: plane(),
    nz: plane(),
    hair: plane(),
    flush: plane(),
    kind: new Uint8Array(size),
    open: plane().fill(1),
  };
};

/** Sets a mesh into the view, nearer things before farther ones. @param turn radians, the nose towards camera-right */
export const set = (view: View, mesh: Mesh, turn: number): void => {
  const { width, height } = view;
  const { columns, rows, points } = mesh;
  const [c, s] = mesh.turns ? [Math.cos(turn), Math.sin(turn)] : [1, 0];
  const count = columns * rows;
  // Turned, and in pixels.
  const at = new Float32Array(count * EACH);
  for (let i = 0; i < count; i++) {
    const o = i * EACH;
    const [x, y, z] = [points[o] as number, points[o + 1] as number, points[o + 2] as number];
    const [nx, nz] = [points[o + 3] as number, points[o + 5] as number];
    at[o] = column(view, x * c + z * s) - 0.5;
    at[o + 1] = row(view, y) - 0.5;
    at[o + 2] = z * c - x * s;
    at[o + 3] = nx * c + nz * s;
    at[o + 4] = points[o + 4] as number;
    at[o + 5] = nz * c - nx * s;
    at[o + 6] = points[o + 6] as number;
    at[o + 7] = points[o + 7] as number;
  }
  const kind = mesh.cloth ? KIND.cloth : KIND.body;
  const { z: depth, nx, ny, nz, hair, flush, kind: kinds } = view;
  const mix = (
    a: number,
    b: number,
    d: number,
    k: number,
    u: number,
    v: number,
    w: number,
  ): number => u * (at[a + k] as number) + v * (at[b + k] as number) + w * (at[d + k] as number);
  const triangle = (a: number, b: number, d: number): void => {
    const [ax, ay] = [at[a] as number, at[a + 1] as number];
    const [bx, by] = [at[b] as number, at[b + 1] as number];
    const [dx, dy] = [at[d] as number, at[d + 1] as number];
    const area = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
    // Turned away from the camera (rows run down the picture, so the sign is the other way).
    if (area >= -1e-9) return;
    const left = Math.max(0, Math.ceil(Math.min(ax, bx, dx)));
    const right = Math.min(width - 1, Math.floor(Math.max(ax, bx, dx)));
    const top = Math.max(0, Math.ceil(Math.min(ay, by, dy)));
    const foot = Math.min(height - 1, Math.floor(Math.max(ay, by, dy)));
    for (let y = top; y <= foot; y++)
      for (let x = left; x <= right; x++) {
        const u = ((dx - bx) * (y - by) - (dy - by) * (x - bx)) / area;
        const v = ((ax - dx) * (y - dy) - (ay - dy) * (x - dx)) / area;
        const w = 1 - u - v;
        if (u < -1e-5 || v < -1e-5 || w < -1e-5) continue;
        const i = y * width + x;
        const z = mix(a, b, d, 2, u, v, w);
        if (z <= (depth[i] as number)) continue;
        depth[i] = z;
        const p = mix(a, b, d, 3, u, v, w);
        const q = mix(a, b, d, 4, u, v, w);
        const r = mix(a, b, d, 5, u, v, w);
        const length = Math.sqrt(p * p + q * q + r * r) || 1;
        nx[i] = p / length;
        ny[i] = q / length;
        nz[i] = r / length;
        hair[i] = mix(a, b, d, 6, u, v, w);
        flush[i] = mix(a, b, d, 7, u, v, w);
        kinds[i] = kind;
      }
  };
  for (let j = 0; j + 1 < rows; j++)
    for (let i = 0; i + 1 < columns; i++) {
      const [a, b] = [(j * columns + i) * EACH, (j * columns + i + 1) * EACH];
      const [e, f] = [a + columns * EACH, b + columns * EACH];
      triangle(a, b, f);
      triangle(a, f, e);
    }
};
