import type { Pen } from './pen.ts';
import { stopsAxis } from './stops-axis.ts';
import { words } from './words.ts';

/** A ruler of stops with the key at 0 and another light where it stands under it. */
export const underKey = (on: Pen, y: number, under: number, text: string): void => {
  const { at } = stopsAxis(on, y, [-under]);
  on.line('object', [
    [at(0), y - 12],
    [at(0), y],
  ]);
  on.line('emphasis', [
    [at(-under), y - 12],
    [at(-under), y],
  ]);
  words(on, y - 34, [
    [at(0), 'key'],
    [at(-under), text, 'emphasis'],
  ]);
};
