import { CHILD, outlineOf } from '../../drawing/figure.ts';
import { EYE, lamps, quay, type BlurPlate } from '../../drawing/blur-plate.ts';

/** Linear light to the screen's own scale (sRGB), in 1024 steps. */
const SCREEN = Uint8ClampedArray.from({ length: 1025 }, (_, i) => {
  const x = i / 1024;
  return 255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055);
});
const onScreen = (light: number): number => SCREEN[Math.round(Math.min(1, light) * 1024)] ?? 255;
const WALL = [0.03, 0.03, 0.035] as const;

/** The sharp quay as the frame sees it, in linear light, three planes of width × height. */
const sharp = (plate: BlurPlate, width: number, height: number): Float32Array => {
  const size = width * height;
  const planes = new Float32Array(3 * size);
  WALL.forEach((light, c) => planes.fill(light, c * size, (c + 1) * size));
  const scale = plate.perMetre.backdrop * height;
  const column = (x: number): number => Math.round(width / 2 + x * scale);
  const row = (y: number): number => Math.round(height / 2 - (y - EYE.floor) * scale);
  for (const { box, colour } of quay) {
    const [left, right] = [Math.max(0, column(box[0])), Math.min(width, column(box[2]))];
    const [top, bottom] = [Math.max(0, row(box[3])), Math.min(height, row(box[1]))];
    for (let y = top; y < bottom; y++)
      if (right > left)
        colour.forEach((light, c) =>
          planes.fill(light, c * size + y * width + left, c * size + y * width + right),
        );
  }
  return planes;
};

/** Every point smeared to an even disc: rows of the disc are differences of running sums. */
const smeared = (
  planes: Float32Array,
  width: number,
  height: number,
  radius: number,
): Float32Array => {
  if (radius < 0.5) return planes;
  const size = width * height;
  const out = new Float32Array(planes.length);
  const sums = new Float32Array(width + 1);
  const rows = Math.floor(radius);
  for (let c = 0; c < 3; c++)
    for (let from = 0; from < height; from++) {
      const start = c * size + from * width;
      for (let x = 0; x < width; x++) sums[x + 1] = (sums[x] ?? 0) + (planes[start + x] ?? 0);
      const edge = [planes[start] ?? 0, planes[start + width - 1] ?? 0] as const;
      /** The sum of the row up to a place between two pixels, its ends carried on outside the frame. */
      const upTo = (x: number): number => {
        if (x <= 0) return x * edge[0];
        if (x >= width) return (sums[width] ?? 0) + (x - width) * edge[1];
        const whole = Math.floor(x);
        return (sums[whole] ?? 0) + (x - whole) * (planes[start + whole] ?? 0);
      };
      for (let dy = -rows; dy <= rows; dy++) {
        const half = Math.sqrt(radius * radius - dy * dy);
        // The first and last rows of the image stand for what lies beyond them.
        const first = from === 0 && dy < 0 ? 0 : from + dy;
        const y = from === height - 1 && dy > 0 ? height - 1 : first;
        if (y < 0 || y >= height) continue;
        const target = c * size + y * width;
        for (let x = 0; x < width; x++)
          out[target + x] = (out[target + x] ?? 0) + upTo(x + 0.5 + half) - upTo(x + 0.5 - half);
      }
    }
  // What the rows added up to, row by row, so that the edges of the frame are as bright as its middle.
  const weights = new Float32Array(height);
  for (let from = 0; from < height; from++)
    for (let dy = -rows; dy <= rows; dy++) {
      const first = from === 0 && dy < 0 ? 0 : from + dy;
      const y = from === height - 1 && dy > 0 ? height - 1 : first;
      if (y >= 0 && y < height)
        weights[y] = (weights[y] ?? 0) + 2 * Math.sqrt(radius * radius - dy * dy);
    }
  for (let c = 0; c < 3; c++)
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const at = c * size + y * width + x;
        out[at] = (out[at] ?? 0) / (weights[y] ?? 1);
      }
  return out;
};

/** Pixels the quay is worked out in: enough that a disc spans some eight, and never more than a phone can smear. */
const workingHeight = (disc: number, height: number): number =>
  Math.round(Math.min(height, Math.max(96, Math.min(320, 8 / Math.max(disc, 1e-3)))));

/**
 * Paints one blur plate: the quay smeared by the disc, each lamp as an even disc of the computed width, the child sharp.
 * The canvas's own pixels are used, so that a disc is as wide as computed at any pixel ratio.
 */
export const paint = (canvas: HTMLCanvasElement, plate: BlurPlate): void => {
  const { width, height } = canvas;
  const context = canvas.getContext('2d');
  if (!context || width === 0 || height === 0) return;

  const tall = workingHeight(plate.disc, height);
  const wide = Math.max(1, Math.round((tall * width) / height));
  const light = smeared(sharp(plate, wide, tall), wide, tall, (plate.disc * tall) / 2);
  const image = new ImageData(wide, tall);
  const size = wide * tall;
  for (let i = 0; i < size; i++) {
    for (let c = 0; c < 3; c++) image.data[4 * i + c] = onScreen(light[c * size + i] ?? 0);
    image.data[4 * i + 3] = 255;
  }
  const small = new OffscreenCanvas(wide, tall);
  small.getContext('2d')?.putImageData(image, 0, 0);
  context.globalCompositeOperation = 'copy';
  context.imageSmoothingQuality = 'high';
  context.drawImage(small, 0, 0, width, height);
  context.globalCompositeOperation = 'source-over';

  const scale = plate.perMetre.backdrop * height;
  const diameter = Math.max(plate.disc * height, 1);
  // A lamp adds its light to what lies behind it.
  context.globalCompositeOperation = 'lighter';
  for (const { x, y, level } of lamps) {
    // A lamp's light is spread over its disc: twice as wide is a quarter as bright, once it no longer burns out.
    const glow = Math.min(1, (level * 8e-4) / Math.max(plate.disc, 0.004) ** 2);
    context.fillStyle = `rgb(${onScreen(glow)} ${onScreen(glow * 0.78)} ${onScreen(glow * 0.42)})`;
    context.beginPath();
    context.arc(
      width / 2 + x * scale,
      height / 2 - (y - EYE.floor) * scale,
      diameter / 2,
      0,
      2 * Math.PI,
    );
    context.fill();
  }

  context.globalCompositeOperation = 'source-over';

  const near = plate.perMetre.child * height;
  context.fillStyle = '#23252b';
  context.beginPath();
  for (const [x, y] of outlineOf(CHILD))
    context.lineTo(width / 2 + x * near, height / 2 - (y - EYE.seat) * near);
  context.fill();
};
