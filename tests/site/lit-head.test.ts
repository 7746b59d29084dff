import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bust, look as seen } from '../../src/drawing/lit-head/portrait.ts';
import { addressOf, look, pages, wake } from '../support/site.ts';

// The head form in millimetres: its forehead and temples are an ellipsoid, its eyes are spheres. The frame is 200 mm
// wide; its middle is 7 mm under the eyes' level. Everything below is worked out from these and the light's own laws.
const CRANIUM = { y: 28, z: -8, a: 70, b: 68, c: 88 };
const EYE = { x: 26, y: -3, cornea: 7.8 };
const FRAME = { width: 200, middle: -7 };
const RAD = Math.PI / 180;

interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

/** sRGB to linear light, by its standard. */
const linear = (level: number): number =>
  level <= 0.04045 * 255 ? level / 255 / 12.92 : ((level / 255 + 0.055) / 1.055) ** 2.4;

/** The mean luminance, linear, of the pixels about a place in millimetres. */
const luminance = ({ width, height, rgba }: Picture, x: number, y: number, about = 1): number => {
  const scale = width / FRAME.width;
  const [i, j] = [
    Math.floor(width / 2 + x * scale),
    Math.floor(height / 2 - (y - FRAME.middle) * scale),
  ];
  let [sum, count] = [0, 0];
  for (let v = j - about; v <= j + about; v++)
    for (let u = i - about; u <= i + about; u++) {
      const at = 4 * (v * width + u);
      const [r = 0, g = 0, b = 0] = [0, 1, 2].map((c) => linear(rgba[at + c] ?? 0));
      sum += 0.2126 * r + 0.7152 * g + 0.0722 * b;
      count += 1;
    }
  return sum / count;
};

const towards = (azimuth: number, elevation: number): [number, number, number] => [
  Math.sin(azimuth * RAD) * Math.cos(elevation * RAD),
  Math.sin(elevation * RAD),
  Math.cos(azimuth * RAD) * Math.cos(elevation * RAD),
];

/** The outward normal of the ellipsoid over a place of the picture. */
const normal = (x: number, y: number): [number, number, number] => {
  const { a, b, c } = CRANIUM;
  const [u, v] = [x / a, (y - CRANIUM.y) / b];
  const w = Math.sqrt(1 - u * u - v * v);
  const length = Math.hypot(u / a, v / b, w / c);
  return [u / a / length, v / b / length, w / c / length];
};
const cosine = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, part, i) => sum + part * (other[i] ?? 0), 0);

const heads = async <T>(
  query: string,
  ratio: number,
  choices: Readonly<Record<string, string>>,
  use: (pictures: readonly Picture[], tab: Page) => Promise<T> | T,
): Promise<T> => {
  const page = pages.find(({ path }) => path === 'plates/light-on-face/');
  if (!page) throw new Error('There is no page /plates/light-on-face/.');
  return look(
    addressOf(page, query),
    { deviceScaleFactor: ratio, viewport: { width: 1280, height: 900 } },
    async (tab) => {
      await wake(tab);
      await tab.locator('.lit-heads').scrollIntoViewIfNeeded();
      for (const [name, value] of Object.entries(choices))
        await tab.locator(`[data-choice=${name}]`).selectOption(value);
      await tab.locator('.lit-heads[data-whole]').waitFor({ timeout: 60_000 });
      const sent = await tab.locator('.lit-heads canvas').evaluateAll((all) =>
        all.map((element) => {
          const canvas = element as HTMLCanvasElement;
          const { width, height } = canvas;
          const data = canvas.getContext('2d')?.getImageData(0, 0, width, height).data ?? [];
          // One long text crosses over far sooner than a list of a million numbers.
          let text = '';
          for (const level of data) text += String.fromCharCode(level);
          return { width, height, text: btoa(text) };
        }),
      );
      const pictures = sent.map(({ width, height, text }) => ({
        width,
        height,
        rgba: new Uint8Array(Buffer.from(text, 'base64')),
      }));
      return use(pictures, tab);
    },
  );
};

// A picture is fine only after some seconds of a slow machine's own time.
const PATIENCE = 120_000;

describe.each([1, 2])('lit heads at %d device pixels a pixel', (ratio) => {
  it(
    'are as bright as the cosine law says, at a dozen known normals on each',
    async () => {
      const query =
        '?key-azimuth=40deg&key-elevation=25deg&head-turn=0deg&fill-stops=2stop&nose-length=15mm';
      await heads(query, ratio, { skin: 'grey' }, (pictures) => {
        expect(pictures).toHaveLength(2);
        for (const [i, picture] of pictures.entries()) {
          const key = towards(i === 0 ? 40 : -40, 25);
          for (const y of [33, 39])
            for (const x of [-38, -24, -8, 8, 24, 38]) {
              // A grey of 18 %: the key by its slant, and a fill two stops under it, even all round.
              const wanted = 0.18 * (cosine(normal(x, y), key) + 2 ** -2);
              const drawn = luminance(picture, x, y);
              expect(Math.abs(drawn / wanted - 1), `${x}, ${y}: ${drawn}, computed ${wanted}`).toBeLessThan(0.03); // prettier-ignore
            }
        }
      });
    },
    PATIENCE,
  );

  it(
    'end the light where the form turns away from the key',
    async () => {
      // A small key, level and 60° round, no fill: light ends on the forehead where its normal is 90° from the key.
      const query = '?key-azimuth=60deg&key-elevation=0deg&head-turn=0deg&nose-length=15mm';
      await heads(query, ratio, { skin: 'fair', size: 'far' }, ([picture]) => {
        if (!picture) throw new Error('There is no picture.');
        const scale = picture.width / FRAME.width;
        const key = towards(60, 0);
        // The key is 3.4° across (18 cm at 3 m): half set, a small disc of tangent t still gives t x (2/3)/pi.
        const half = ((0.18 / 2 / 3) * 2) / (3 * Math.PI);
        for (const y of [34, 39]) {
          const at = (bright: (x: number) => number): number => {
            for (let x = 0; x > -65; x -= 0.5 / scale) if (bright(x) < half) return x;
            return Number.NaN;
          };
          const wanted = at((x) => cosine(normal(x, y), key) + half);
          const drawn = at((x) => luminance(picture, x, y, 0) / 0.36);
          expect(Math.abs(drawn - wanted) * scale, `${drawn}, computed ${wanted} mm`).toBeLessThan(
            2,
          );
        }
      });
    },
    PATIENCE,
  );

  it(
    'throw the shadow of the nose where rays to a small key meet the form',
    async () => {
      const query = '?key-azimuth=45deg&key-elevation=30deg&head-turn=0deg&nose-length=15mm';
      await heads(query, ratio, { skin: 'grey', size: 'far' }, ([picture]) => {
        if (!picture) throw new Error('There is no picture.');
        // The form's own depths and normals; whether a ray from a place to the key runs into it is worked out here.
        const view = seen(bust(15), picture.width, 0);
        const { width, scale, z, nx, ny, nz } = view;
        const key = towards(45, 30);
        const depth = (x: number, y: number): number => {
          const [i, j] = [Math.floor(x), Math.floor(y)];
          const at = (u: number, v: number): number => z[v * width + u] ?? -1e4;
          const [a, b] = [x - i, y - j];
          return (
            (at(i, j) * (1 - a) + at(i + 1, j) * a) * (1 - b) +
            (at(i, j + 1) * (1 - a) + at(i + 1, j + 1) * a) * b
          );
        };
        const runsInto = (i: number, j: number): boolean => {
          for (let t = 1; t < 60; t += 0.2) {
            const [x, y] = [i + t * key[0] * scale, j - t * key[1] * scale];
            if (depth(x, y) > (z[j * width + i] ?? 0) + t * key[2] + 0.25) return true;
          }
          return false;
        };
        // Beside and under the nose, away from the key; how far a dark place lies along the shadow's way, in pixels.
        const [tipX, tipY] = [width / 2, view.height / 2 - (-26 - FRAME.middle) * scale];
        const way = [-key[0] / Math.hypot(key[0], key[1]), key[1] / Math.hypot(key[0], key[1])];
        let [wanted, drawn] = [0, 0];
        for (let j = Math.round(tipY); j < tipY + 16 * scale; j++)
          for (let i = Math.round(tipX - 24 * scale); i < tipX; i++) {
            const at = j * width + i;
            const slant = cosine([nx[at] ?? 0, ny[at] ?? 0, nz[at] ?? 0], key);
            if (slant < 0.2) continue;
            const along = (i - tipX) * (way[0] ?? 0) + (j - tipY) * (way[1] ?? 0);
            if (runsInto(i, j)) wanted = Math.max(wanted, along);
            const pixel = [0, 1, 2].map((c) => linear(picture.rgba[4 * at + c] ?? 0));
            const light = (0.2126 * (pixel[0] ?? 0) + 0.7152 * (pixel[1] ?? 0) + 0.0722 * (pixel[2] ?? 0)) / 0.18; // prettier-ignore
            if (light < 0.4 * slant) drawn = Math.max(drawn, along);
          }
        expect(wanted, 'a shadow').toBeGreaterThan(8 * scale);
        expect(Math.abs(drawn - wanted), `${drawn} px, computed ${wanted} px`).toBeLessThan(2);
      });
    },
    PATIENCE,
  );

  it(
    'mirror the key in both eyes halfway to it',
    async () => {
      const query = '?key-azimuth=45deg&key-elevation=30deg&head-turn=0deg&fill-stops=3stop';
      await heads(query, ratio, { skin: 'deep', size: 'dish' }, ([picture]) => {
        if (!picture) throw new Error('There is no picture.');
        const scale = picture.width / FRAME.width;
        const [x, y, z] = towards(45, 30);
        const long = Math.hypot(x, y, z + 1);
        for (const side of [-1, 1]) {
          // Eyes straight ahead: the cornea's middle is where the eye's is; its image lies along the half vector.
          const wanted = [side * EYE.x + (EYE.cornea * x) / long, EYE.y + (EYE.cornea * y) / long];
          let [sum, sx, sy] = [0, 0, 0];
          for (let v = EYE.y - 5; v <= EYE.y + 5; v += 0.5 / scale)
            for (let u = side * EYE.x - 5; u <= side * EYE.x + 5; u += 0.5 / scale) {
              // Within the iris, which reflects less than a tenth.
              if (Math.hypot(u - side * EYE.x, v - EYE.y) > 4.5) continue;
              const bright = luminance(picture, u, v, 0);
              if (bright < 0.15) continue;
              sum += bright;
              sx += bright * u;
              sy += bright * v;
            }
          expect(sum, 'a catchlight').toBeGreaterThan(0);
          expect(Math.abs(sx / sum - (wanted[0] ?? 0)) * scale).toBeLessThan(1.5);
          expect(Math.abs(sy / sum - (wanted[1] ?? 0)) * scale).toBeLessThan(1.5);
        }
      });
    },
    PATIENCE,
  );
});

describe('the light meter', () => {
  const query =
    '?key-azimuth=0deg&key-elevation=0deg&head-turn=0deg&fill-stops=0stop&nose-length=15mm';

  it(
    'reads in words, moves by arrow keys, by the list and by dragging',
    async () => {
      await heads(query, 1, {}, async (_pictures, tab) => {
        const reading = tab.locator('.lit-reading');
        // Key and fill alike and nearly square on: twice the key's light is a stop over it.
        await tab.locator('[data-meter-at]').selectOption('forehead');
        expect(await reading.textContent()).toMatch(
          /forehead: (0\.9 stops|1\.0 stop) over the key as set/,
        );
        const ring = tab.locator('.lit-meter').first();
        const before = await ring.boundingBox();
        await ring.focus();
        await tab.keyboard.press('Shift+ArrowRight');
        const after = await ring.boundingBox();
        const frame = await tab.locator('.lit-frame').first().boundingBox();
        // Ten millimetres of the frame's 200.
        expect((after?.x ?? 0) - (before?.x ?? 0)).toBeCloseTo((frame?.width ?? 0) / 20, 0);
        expect(await tab.locator('[data-meter-at]').inputValue()).toBe('');
        await tab.mouse.move((after?.x ?? 0) + 14, (after?.y ?? 0) + 14);
        await tab.mouse.down();
        await tab.mouse.move((frame?.x ?? 0) + (frame?.width ?? 0) * 0.66, (frame?.y ?? 0) + (frame?.height ?? 0) * 0.6, { steps: 4 }); // prettier-ignore
        await tab.mouse.up();
        expect(await reading.textContent()).toContain('cheek, camera-right');
      });
    },
    PATIENCE,
  );

  it(
    'reads the same on every skin',
    async () => {
      const read = (skin: string): Promise<string | null> =>
        heads(query, 1, { skin }, (_pictures, tab) => tab.locator('.lit-reading').textContent());
      expect(await read('deep')).toBe(await read('fair'));
    },
    PATIENCE,
  );
});
