import { toCentimetre, type Handle, type Settings } from '../handle.ts';
import type { Place } from './scene.ts';
import type { View } from './views.ts';

type Ends = readonly [number, number];

/** What may be moved of a place in a view, and between which ends; a direction left out stays as it is. */
export interface Moves {
  readonly behind?: Ends;
  /** Across in the plan, height in the side view. */
  readonly other?: Ends;
  /** The place comes as it is on the sheet: whoever asked rounds what follows from it. */
  readonly fine?: true;
}

/**
 * Something of a scene that can be moved in one view: a handle on its place.
 * @param to what the new place sets, in the words of whoever asked; it gets the place with what was moved
 */
export const movable = (
  view: View,
  named: { readonly id: string; readonly name: string; readonly says: string },
  place: Place,
  moves: Moves,
  to: (place: Place) => Settings,
): Handle => {
  const [x, y] = view.at(place);
  const key = view.name === 'plan' ? 'aside' : 'height';
  const [first, ends] = moves.behind
    ? ([place.behind, moves.behind] as const)
    : ([place[key], moves.other ?? ([0, 0] as const)] as const);
  return {
    id: `${named.id}-${view.name}`,
    name: `${named.name}, ${view.name === 'plan' ? 'from above' : 'from the side'}`,
    says: named.says,
    x,
    y,
    ways: !moves.other ? 'across' : !moves.behind ? 'up' : 'both',
    scale: view.scale,
    now: first,
    ends,
    set: (u, v) => {
      const [p, q] = view.off(u, v);
      const rounded = moves.fine ? (x: number): number => x : toCentimetre;
      return to({
        ...place,
        ...(moves.behind && { behind: rounded(p, moves.behind) }),
        ...(moves.other && { [key]: rounded(q, moves.other) }),
      });
    },
  };
};
