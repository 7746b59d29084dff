import type { Place } from './scene.ts';

export const from = (a: Place, b: Place): Place => ({
  aside: b.aside - a.aside,
  behind: b.behind - a.behind,
  height: b.height - a.height,
});

export const span = ({ aside, behind, height }: Place): number => Math.hypot(aside, behind, height);

/** The direction from one place to another, of length 1; towards the camera where both are the same. */
export const towards = (a: Place, b: Place): Place => {
  const way = from(a, b);
  const length = span(way);
  return length > 1e-9
    ? { aside: way.aside / length, behind: way.behind / length, height: way.height / length }
    : { aside: 0, behind: -1, height: 0 };
};
