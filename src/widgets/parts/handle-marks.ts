import type { Handle } from '../../drawing/handle.ts';
import type { Wanted } from './dom.ts';

/** What a finger is given to hold: 28 of the sheet's units, a phone's pixels. */
const TARGET = '14';

const HEADS: Readonly<Record<'left' | 'right' | 'up' | 'down', string>> = {
  left: 'M-8.5 -3L-12 0L-8.5 3',
  right: 'M8.5 -3L12 0L8.5 3',
  up: 'M-3 -8.5L0 -12L3 -8.5',
  down: 'M-3 8.5L0 12L3 8.5',
};

/** A ring, with an arrowhead each way it goes. */
const knob = (ways: Handle['ways']): string =>
  [
    'M-5.5 0A5.5 5.5 0 0 1 5.5 0A5.5 5.5 0 0 1 -5.5 0Z',
    ...(ways === 'up' ? [] : [HEADS.left, HEADS.right]),
    ...(ways === 'across' ? [] : [HEADS.up, HEADS.down]),
  ].join('');

const number = (x: number): string => String(Number(x.toFixed(3)));

/** What a handle's element carries and holds: the page built before any script and the script's are set from this alone. */
export const handleElement = (
  handle: Handle,
): {
  readonly attributes: Readonly<Record<string, string>>;
  readonly inner: readonly Wanted[];
} => ({
  attributes: {
    class: 'handle',
    'data-handle': handle.id,
    role: 'slider',
    tabindex: '0',
    'aria-label': handle.name,
    'aria-valuemin': number(handle.ends[0]),
    'aria-valuemax': number(handle.ends[1]),
    'aria-valuenow': number(handle.now),
    'aria-valuetext': handle.says,
    transform: `translate(${handle.x} ${handle.y})`,
  },
  inner: [
    { name: 'circle', attributes: { class: 'handle-target', r: TARGET } },
    { name: 'path', attributes: { class: 'handle-knob', d: knob(handle.ways) } },
  ],
});
