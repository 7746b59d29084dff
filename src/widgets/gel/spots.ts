import { BALANCES, CLOTH, gelSpots, profile, type Balance } from '../../drawing/gel-spots.ts';
import type { LivePlate } from '../parts/live.ts';
import type { PlateState } from '../parts/plate-state.ts';
import { all, one, setText } from '../parts/dom.ts';
import { onScreen, type Shown } from './screen.ts';

/** The bare spot's middle on the screen, in linear light: about a stop over middle grey, so that its colours have room. */
const BARE = 0.4;
/** The part of the picture's height that the profile has. */
const GRAPH = 0.36;

const encoded = (x: number): number =>
  255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055);

/** Paints one spot on the cloth, and under it how its light falls off from the middle to the sides. */
const paint = (canvas: HTMLCanvasElement, { light }: Shown, through: number): void => {
  const { width, height } = canvas;
  const context = canvas.getContext('2d');
  if (!context || width === 0 || height === 0) return;
  const tall = Math.round(height * (1 - GRAPH));
  const perMetre = width / CLOTH.width;
  const image = new ImageData(width, tall);
  // The fall-off along one line from the middle, to look up.
  const falls = Float32Array.from({ length: width + tall }, (_, i) => profile(i / perMetre));
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < width; x++) {
      const share = falls[Math.round(Math.hypot(x + 0.5 - width / 2, y + 0.5 - tall / 2))] ?? 0;
      const at = 4 * (y * width + x);
      for (let c = 0; c < 3; c++) image.data[at + c] = encoded((light[c] ?? 0) * share);
      image.data[at + 3] = 255;
    }
  context.clearRect(0, 0, width, height);
  context.putImageData(image, 0, 0);

  const { color } = getComputedStyle(canvas);
  const [top, foot] = [tall + 0.05 * height, height - 2];
  const y = (share: number): number => foot - share * (foot - top);
  context.strokeStyle = color;
  const line = (dash: number[], heavy: number, of: (x: number) => number): void => {
    context.setLineDash(dash);
    context.lineWidth = (heavy * width) / 170;
    context.beginPath();
    for (let x = 0; x <= width; x++) context.lineTo(x, of(x));
    context.stroke();
  };
  line([], 0.7, () => foot);
  // The bare light's own, for comparison, dashed.
  line([4, 3], 0.7, (x) => y(profile((x - width / 2) / perMetre)));
  line([], 1.6, (x) => y(through * profile((x - width / 2) / perMetre)));
};

/** Keeps the three spots in step with their plate, painting only while they can be seen. */
export const followGel = (plate: LivePlate): void => {
  const figure = one(plate.section, '.gel-spots');
  if (!figure) return;
  const canvases = all<HTMLCanvasElement>(figure, 'canvas');
  const swatches = all(figure, '.gel-swatch');
  const names = all(figure, '[data-name]');
  const coordinates = all(figure, '[data-coordinates]');
  const notes = all(figure, '[data-note]');
  const choice = (name: string): string =>
    figure.querySelector<HTMLSelectElement>(`[data-choice=${name}]`)?.value ?? '';
  let seen = false;

  const show = ({ given, results, style }: PlateState): void => {
    if (!seen) return;
    const balance: Balance = BALANCES.find(({ id }) => id === choice('balance'))?.id ?? 'source';
    const { source, white, spots } = gelSpots(
      given,
      results,
      { colour: choice('colour'), balance },
      style,
    );
    spots.forEach((spot, i) => {
      const shown = onScreen(spot, BARE * spot.through, {
        white,
        source,
        ...(spot.measured && { measured: spot.measured }),
      });
      setText(names[i] ?? null, spot.name);
      setText(coordinates[i] ?? null, spot.coordinates);
      setText(notes[i] ?? null, shown.within ? '' : 'beyond this screen: the nearest it has');
      const [r, g, b] = shown.light.map(encoded);
      const swatch = swatches[i];
      if (swatch) swatch.style.backgroundColor = `rgb(${r ?? 0} ${g ?? 0} ${b ?? 0})`;
      const canvas = canvases[i];
      if (!canvas) return;
      const width = Math.round(canvas.clientWidth * devicePixelRatio);
      const height = Math.round((width * CLOTH.height) / CLOTH.width / (1 - GRAPH));
      if (canvas.width !== width || canvas.height !== height)
        Object.assign(canvas, { width, height });
      canvas.setAttribute('aria-label', spot.says);
      paint(canvas, shown, spot.through);
    });
  };
  plate.follow = show;
  const again = (): void => {
    show(plate.state);
  };
  figure.addEventListener('change', again);
  new IntersectionObserver(([entry]) => {
    seen = entry?.isIntersecting ?? false;
    again();
  }).observe(figure);
  new ResizeObserver(again).observe(figure);
  // The profile is drawn in the page's own ink.
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', again);
  new MutationObserver(again).observe(document.documentElement, {
    attributeFilter: ['data-theme'],
  });
};
