import {
  meter,
  nameOf,
  PLACES,
  seenAt,
  spotAt,
  spotOf,
  type PlaceId,
  type Spot,
} from '../../drawing/lit-head/places.ts';
import { sayStops } from '../../drawing/lit-head/says.ts';
import { FRAME } from '../../drawing/lit-head/view.ts';
import type { Style } from '../../formula/notation/write.ts';
import { all, one, setText } from '../parts/dom.ts';
import type { Painted } from './heads.ts';

/** Millimetres that an arrow key moves the meter, and with the shift key. */
const [STEP, STRIDE] = [2, 10];
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The light meter that lies on both heads at the same spot: dragged, moved by arrow keys, or sent to a named place. */
export const lightMeter = (
  figure: HTMLElement,
): {
  /** A head was painted. */
  readonly painted: (at: number, head: Painted) => void;
  /** The plate moved: the nose's length, and how numbers are written. */
  readonly set: (nose: number, style: Style) => void;
} => {
  const frames = all(figure, '.lit-frame');
  const marks = all(figure, '.lit-meter');
  const says = one(figure, '.lit-reading');
  const list = figure.querySelector<HTMLSelectElement>('[data-meter-at]');
  const heads: Painted[] = [];
  let named: PlaceId | undefined = 'forehead';
  let [nose, style]: [number, Style] = [15, {}];
  let spot: Spot = spotOf('forehead', nose);

  const show = (): void => {
    const [head] = heads;
    if (!head) return;
    const [x, y] = seenAt(spot, head.turn);
    for (const mark of marks) {
      mark.style.left = `${50 + (100 * x) / FRAME.width}%`;
      mark.style.top = `${50 - (100 * (y - FRAME.middle)) / FRAME.height}%`;
      mark.dataset['placed'] = '';
    }
    const read = heads.map(({ view, lit, turn }) => meter(view, lit.light, spot, turn));
    const [set, other] = read;
    const place = nameOf(spot, nose);
    setText(
      says,
      set === undefined || other === undefined
        ? `The meter is at the ${place}, which is turned away from the camera.`
        : `Meter on the head, ${place}: ${sayStops(set, style)} as set, ${sayStops(other, style)} from the other side.`,
    );
  };

  const move = (x: number, y: number): void => {
    const [head] = heads;
    const found = head && spotAt(head.view, x, y, head.turn);
    if (!found) return;
    spot = found;
    named = undefined;
    if (list) list.value = '';
    show();
  };

  frames.forEach((frame, i) => {
    const mark = marks[i];
    const follow = (event: PointerEvent | MouseEvent): void => {
      const box = frame.getBoundingClientRect();
      move(
        ((event.clientX - box.left) / box.width - 0.5) * FRAME.width,
        FRAME.middle + (0.5 - (event.clientY - box.top) / box.height) * FRAME.height,
      );
    };
    mark?.addEventListener('pointerdown', (event) => {
      mark.setPointerCapture(event.pointerId);
    });
    mark?.addEventListener('pointermove', (event) => {
      if (mark.hasPointerCapture(event.pointerId)) follow(event);
    });
    frame.addEventListener('click', (event) => {
      if (event.target !== mark) follow(event);
    });
    mark?.addEventListener('keydown', (event) => {
      const way = WAYS[event.key];
      const [head] = heads;
      if (!way || !head) return;
      event.preventDefault();
      const [x, y] = seenAt(spot, head.turn);
      const step = event.shiftKey ? STRIDE : STEP;
      move(x + way[0] * step, y + way[1] * step);
    });
  });
  list?.addEventListener('change', () => {
    const place = PLACES.find(({ id }) => id === list.value);
    if (!place) return;
    named = place.id;
    spot = spotOf(place.id, nose);
    show();
  });

  return {
    painted: (at, head) => {
      heads[at] = head;
      if (heads.length === frames.length) show();
    },
    set: (length, how) => {
      [nose, style] = [length, how];
      if (named) spot = spotOf(named, nose);
    },
  };
};
