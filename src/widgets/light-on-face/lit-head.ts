import { FIRST, RIMS, sizeOf, SIZES, SKINS } from '../../drawing/lit-head/choices.ts';
import { pairOf } from '../../drawing/lit-head/says.ts';
import { skinColour } from '../../drawing/lit-head/portrait.ts';
import { FRAME } from '../../drawing/lit-head/view.ts';
import type { LivePlate } from '../parts/live.ts';
import type { PlateState } from '../parts/plate-state.ts';
import { all, one, setText } from '../parts/dom.ts';
import { heads } from './heads.ts';
import { lightMeter } from './meter.ts';

const chosen = <T extends { readonly id: string }>(all: readonly T[], id: string): T | undefined =>
  all.find((one) => one.id === id) ?? all[0];

/** Keeps both lit heads and the meter in step with their plate, painting only while they can be seen. */
export const followHead = (plate: LivePlate): void => {
  const figure = one(plate.section, '.lit-heads');
  if (!figure) return;
  const canvases = all<HTMLCanvasElement>(figure, 'canvas');
  const names = all(figure, '[data-name]');
  const choice = (name: keyof typeof FIRST): string =>
    figure.querySelector<HTMLSelectElement>(`[data-choice=${name}]`)?.value ?? FIRST[name];
  const meter = lightMeter(figure);
  const fine = new Set<number>();
  const paint = heads(canvases, (at, head, isFine) => {
    meter.painted(at, head);
    if (isFine) fine.add(at);
    // For those who wait for the picture: it says when it is whole.
    figure.toggleAttribute('data-whole', fine.size === canvases.length);
  });
  let seen = false;
  let last = '';

  const show = ({ given, style }: PlateState): void => {
    if (!seen) return;
    const { turn, nose, both } = pairOf(given, style);
    for (const canvas of canvases) {
      const width = Math.round(canvas.clientWidth * devicePixelRatio);
      const height = Math.round((width * FRAME.height) / FRAME.width);
      if (width > 0 && (canvas.width !== width || canvas.height !== height))
        Object.assign(canvas, { width, height });
    }
    both.forEach(({ name, says }, i) => {
      canvases[i]?.setAttribute('aria-label', says);
      setText(names[i] ?? null, name);
    });
    meter.set(nose, style);
    const size = chosen(SIZES, choice('size'));
    const skin = chosen(SKINS, choice('skin'));
    const wanted = {
      turn,
      nose,
      lights: both.map(({ lights }) => ({
        ...lights,
        size: size ? sizeOf(size) : 0,
        rimStops: chosen(RIMS, choice('rim'))?.stops,
      })),
      skin: skinColour(skin?.reflectance ?? 0.2, skin?.grey),
    };
    // Setting the page sets it whole; the heads are painted anew only when they change.
    const sight = JSON.stringify([wanted, canvases[0]?.width]);
    if (sight === last) return;
    last = sight;
    fine.clear();
    figure.removeAttribute('data-whole');
    paint(wanted);
  };
  plate.follow = show;
  figure.addEventListener('change', () => {
    show(plate.state);
  });
  new IntersectionObserver(([entry]) => {
    seen = entry?.isIntersecting ?? false;
    show(plate.state);
  }).observe(figure);
  new ResizeObserver(() => {
    show(plate.state);
  }).observe(figure);
};
