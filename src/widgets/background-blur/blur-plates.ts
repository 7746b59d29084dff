import { blurPlates } from '../../drawing/blur-plate.ts';
import type { PlateState } from '../parts/plate-state.ts';
import type { LivePlate } from '../parts/live.ts';
import { all, one, setText } from '../parts/dom.ts';
import { paint } from './paint.ts';

/** Keeps the three blur plates in step with their plate, painting only while they can be seen. */
export const followBlur = (plate: LivePlate): void => {
  const figure = one(plate.section, '.blur-plates');
  if (!figure) return;
  const canvases = all<HTMLCanvasElement>(figure, 'canvas');
  const names = all(figure, '[data-name]');
  let seen = false;

  const show = ({ given, style }: PlateState): void => {
    if (!seen) return;
    const { shape, plates } = blurPlates(given, style);
    canvases.forEach((canvas, i) => {
      const one = plates[i];
      if (!one) return;
      const width = Math.round(canvas.clientWidth * devicePixelRatio);
      const height = Math.round(width / shape);
      if (canvas.width !== width || canvas.height !== height)
        Object.assign(canvas, { width, height });
      canvas.setAttribute('aria-label', one.says);
      setText(names[i] ?? null, one.name);
      paint(canvas, one);
    });
  };
  plate.follow = show;
  new IntersectionObserver(([entry]) => {
    seen = entry?.isIntersecting ?? false;
    show(plate.state);
  }).observe(figure);
  new ResizeObserver(() => {
    show(plate.state);
  }).observe(figure);
};
