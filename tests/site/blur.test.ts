import { describe, expect, it } from 'vitest';
import { addressOf, look, pages, wake } from '../support/site.ts';

/** A row of the canvas through a lamp, as luminances, and the canvas's height. */
interface Row {
  readonly light: readonly number[];
  readonly width: number;
  readonly height: number;
}

// The harbour's frame with a long lens and the quay far behind, so that discs are wide: upright 36 × 24 mm, 135 mm. The lamp hangs 0.26 m beside the axis
// and 1.10 m up, in an even stretch of sky; the lens is 0.61 m up.
const [f, s, b, up] = [0.135, 3.51, 3, 0.036];
const lamp = { x: 0.26, y: 1.1, lens: 0.61 };
const m = f / (s - f);

/** What the formula says: the disc's diameter as a share of the frame's height. */
const share = (N: number): number => ((m * f) / N) * (b / (s + b)) * (1 / up);
/** Frame heights a metre at the backdrop: the child's scale, smaller by the distances. */
const perMetre = (m / up) * (s / (s + b));

describe.each([1, 2])('blur plates at %d device pixels a pixel', (ratio) => {
  it('draw a lamp as an even disc of the computed width, at three apertures', async () => {
    const page = pages.find(({ path }) => path === 'plates/background-blur/');
    if (!page) throw new Error('There is no page /plates/background-blur/.');
    const query =
      '?format=36x24&orientation=portrait&focal-length=135mm&f-number=f/2&second-f-number=f/1.4&third-f-number=f/2.8&subject-distance=3.51m&backdrop-distance=3m';
    await look(
      'about:blank',
      { deviceScaleFactor: ratio, viewport: { width: 1280, height: 900 } },
      async (tab) => {
        await tab.goto(addressOf(page, query), { waitUntil: 'load' });
        await wake(tab);
        await tab.locator('.blur-plates').scrollIntoViewIfNeeded();
        await tab.waitForFunction(() =>
          (
            document.querySelector('.blur-plates canvas')?.getAttribute('aria-label') ?? ''
          ).includes('f/1.4'),
        );
        for (const [i, N] of [1.4, 2, 2.8].entries()) {
          const { light, width, height } = await tab
            .locator('.blur-plates canvas')
            .nth(i)
            .evaluate(
              (element, { perMetre: scale, lamp: at }): Row => {
                const canvas = element as HTMLCanvasElement;
                const y = Math.round(canvas.height / 2 - (at.y - at.lens) * scale * canvas.height);
                const data =
                  canvas.getContext('2d')?.getImageData(0, y, canvas.width, 1).data ?? [];
                const row = Array.from({ length: canvas.width }, (_, x) => {
                  const [r = 0, g = 0, blue = 0] = [0, 1, 2].map((c) => data[4 * x + c] ?? 0);
                  return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
                });
                return { light: row, width: canvas.width, height: canvas.height };
              },
              { perMetre, lamp },
            );
          const centre = width / 2 + lamp.x * perMetre * height;
          const diameter = share(N) * height;
          const near = (from: number, to: number): number[] =>
            light.slice(Math.ceil(from), Math.floor(to));
          const inside = near(centre - diameter * 0.4, centre + diameter * 0.4);
          const outside = near(centre + diameter * 0.8, centre + diameter * 1.2);
          const mean = (all: readonly number[]): number =>
            all.reduce((a, x) => a + x, 0) / all.length;
          const [lit, dark] = [mean(inside), mean(outside)];
          expect(lit).toBeGreaterThan(dark * 1.2);
          for (const one of inside) expect(Math.abs(one - lit)).toBeLessThan(0.05 * lit);
          // Each pixel counts by how much of it the disc covers.
          const covered = near(centre - diameter, centre + diameter).reduce(
            (sum, one) => sum + Math.min(1, Math.max(0, (one - dark) / (lit - dark))),
            0,
          );
          expect(
            Math.abs(covered - diameter),
            `f/${N}: ${covered} px, computed ${diameter}`,
          ).toBeLessThan(1);
        }
      },
    );
  });
});
