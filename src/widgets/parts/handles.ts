import type { Handle } from '../../drawing/handle.ts';
import { all, settle } from './dom.ts';
import { handleElement } from './handle-marks.ts';
import type { LivePlate } from './live.ts';

const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Metres of the set an arrow key goes, and with Shift. */
const [STEP, STRIDE] = [0.05, 0.25];

interface Held {
  readonly pointer: number;
  /** As it was taken up: its sheet says what a place means until it is let go, even if the scale changes meanwhile. */
  readonly handle: Handle;
  /** From the pointer to the handle's middle. */
  readonly off: readonly [number, number];
}

/**
 * Lets a plate's handles be moved by pointer and by arrow keys, and keeps them where the plate's numbers are. For plates
 * whose calculator has handles; its fields are the typed way to the same.
 */
export const withHandles = (plate: LivePlate): void => {
  const group = plate.section.querySelector<SVGGElement>('.handles');
  const svg = group?.ownerSVGElement;
  const { state } = plate;
  const { handles } = state.calculator;
  if (!group || !svg || !handles) return;

  const current = (): readonly Handle[] => handles(state.given, state.results, state.style);
  const handleOf = (event: Event): [Element, Handle] | undefined => {
    const element = event.target instanceof Element ? event.target.closest('.handle') : null;
    const id = element?.getAttribute('data-handle');
    const handle = current().find((one) => one.id === id);
    return element && handle ? [element, handle] : undefined;
  };
  const move = (handle: Handle, x: number, y: number): void => {
    for (const [key, value] of Object.entries(handle.set(x, y))) state.put(key, value);
    plate.changed();
  };
  const onSheet = ({ clientX, clientY }: PointerEvent): DOMPoint =>
    new DOMPoint(clientX, clientY).matrixTransform(svg.getScreenCTM()?.inverse());

  let held: Held | undefined;
  group.addEventListener('pointerdown', (event) => {
    const [element, handle] = handleOf(event) ?? [];
    if (!element || !handle || event.button !== 0) return;
    const { x, y } = onSheet(event);
    held = { pointer: event.pointerId, handle, off: [handle.x - x, handle.y - y] };
    element.setPointerCapture(event.pointerId);
    if (element instanceof SVGElement) element.focus({ preventScroll: true });
    // Else the browser begins to select the words of the drawing.
    event.preventDefault();
  });
  group.addEventListener('pointermove', (event) => {
    if (held?.pointer !== event.pointerId) return;
    const { x, y } = onSheet(event);
    move(held.handle, x + held.off[0], y + held.off[1]);
  });
  // However it ends: the button goes up, a gesture of the system takes over, the page is left.
  group.addEventListener('lostpointercapture', () => {
    held = undefined;
  });

  group.addEventListener('keydown', (event) => {
    const way = KEYS[event.key];
    const [, handle] = handleOf(event) ?? [];
    if (!way || !handle || event.ctrlKey || event.altKey || event.metaKey) return;
    const [dx, dy] = way;
    if (handle.ways !== 'both' && (handle.ways === 'across') !== (dx !== 0)) return;
    const units = (event.shiftKey ? STRIDE : STEP) * handle.scale;
    move(handle, handle.x + dx * units, handle.y + dy * units);
    event.preventDefault();
  });

  const { follow } = plate;
  plate.follow = (now) => {
    follow(now);
    if (now.stale) return;
    const wanted = current().map(handleElement);
    settle(
      group,
      wanted.map(({ attributes }) => ({ name: 'g', attributes })),
      svg.namespaceURI ?? '',
    );
    all<SVGGElement>(group, '.handle').forEach((element, i) => {
      settle(element, wanted[i]?.inner ?? [], svg.namespaceURI ?? '');
    });
  };
};
