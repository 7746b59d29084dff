import type { View } from './view.ts';

const WAYS = 8;
/** Millimetres out that a hollow's walls are looked for. */
const STEPS = [1.5, 3, 5, 8, 12, 18, 26];

/**
 * How much of an even light from all round reaches each place past the form's own hollows: one on every bulge, less
 * in the corners of the eyes, under the nose and under the chin. Worked out once for each turn of the head.
 */
export const openness = (view: View): void => {
  const { width, height, scale, z, nx, ny, nz, kind, open } = view;
  // Every second pixel each way is enough for what changes slowly.
  const wide = Math.ceil(width / 2);
  const small = new Float32Array(wide * Math.ceil(height / 2)).fill(1);
  for (let j = 0; j < height; j += 2)
    for (let i = 0; i < width; i += 2) {
      const here = j * width + i;
      if (kind[here] === 0) continue;
      const facing = Math.max(0.15, nz[here] as number);
      let lost = 0;
      for (let way = 0; way < WAYS; way++) {
        const [ux, uy] = [
          Math.cos((way * 2 * Math.PI) / WAYS),
          Math.sin((way * 2 * Math.PI) / WAYS),
        ];
        const own = -((nx[here] as number) * ux + (ny[here] as number) * uy) / facing;
        let horizon = own;
        for (const step of STEPS) {
          const x = Math.round(i + ux * step * scale);
          const y = Math.round(j - uy * step * scale);
          if (x < 0 || y < 0 || x >= width || y >= height) break;
          const slope = ((z[y * width + x] as number) - (z[here] as number) - 0.5) / step;
          if (slope > horizon) horizon = slope;
        }
        const raised = Math.atan(horizon) - Math.atan(own);
        lost += Math.sin(Math.min(Math.PI / 2, raised)) ** 2;
      }
      small[(j >> 1) * wide + (i >> 1)] = 1 - lost / WAYS;
    }
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const [x, y] = [i >> 1, j >> 1];
      const [e, s] = [
        Math.min(x + (i & 1), wide - 1),
        Math.min(y + (j & 1), Math.ceil(height / 2) - 1),
      ];
      open[j * width + i] =
        ((small[y * wide + x] as number) +
          (small[y * wide + e] as number) +
          (small[s * wide + x] as number) +
          (small[s * wide + e] as number)) /
        4;
    }
};
