import { clip, type Box, type Point } from '../clip.ts';
import type { Pen } from '../pen.ts';
import type { Axes } from './beam.ts';
import type { Light, Source } from './scene.ts';
import type { View } from './views.ts';

/** A symbol's outline, for half a breadth of 1: how deep it is, and how broad at its back. */
const BODY: Readonly<Record<Exclude<Source, 'bare bulb' | 'umbrella' | 'window'>, Point>> = {
  'standard reflector': [1.1, 0.55],
  grid: [1.1, 0.55],
  'beauty dish': [0.5, 0.35],
  softbox: [0.6, 0.4],
  strip: [1, 0.5],
};
/** A head is about so deep and half so broad, in metres. */
const HEAD = [0.3, 0.065] as const;

const turned = (count: number, from: number, to: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/**
 * A light as one view shows it: its front to scale, and never too small to see. Returns what it covers of the sheet.
 * Plain forms of our own: what shapes the light, the head behind it, and the lit front.
 */
export const lightSymbol = (on: Pen, view: View, axes: Axes, light: Light, air: Box): Box => {
  const breadth = view.name === 'side' ? (light.tall ?? light.width) : light.width;
  const half = Math.max((breadth / 2) * view.scale, 4.5);
  // Seen from its front it is no deeper than a third of what it is.
  const [ax, ay] = axes.along;
  const length = Math.hypot(ax, ay);
  const seen = Math.max(length, 0.34) / Math.max(length, 1e-9);
  const [x, y] = view.onto(axes.at);
  const down = view.name === 'plan' ? 1 : -1;
  const at = (u: number, v: number): Point => [
    Math.round((x + u * ax * seen + v * axes.across[0]) * 100) / 100,
    Math.round((y + down * (u * ay * seen + v * axes.across[1])) * 100) / 100,
  ];
  const drawn: Point[] = [];
  const solid = (points: readonly Point[]): void => {
    const kept = clip(points, air);
    drawn.push(...kept);
    on.area('object', kept);
  };
  const line = (role: 'object' | 'light' | 'dimension', points: readonly Point[]): void => {
    const kept = clip(points, air);
    drawn.push(...kept);
    on.line(role, kept);
  };
  const head = (behind: number): void => {
    const deep = Math.min(Math.max(HEAD[0] * view.scale, 7), 26);
    const broad = Math.min(Math.max(HEAD[1] * view.scale, 3.2), 7);
    solid([
      at(-behind, -broad),
      at(-behind - deep, -broad),
      at(-behind - deep, broad),
      at(-behind, broad),
    ]);
  };
  switch (light.source) {
    case 'window':
      solid([at(0, -half), at(-4, -half), at(-4, half), at(0, half)]);
      break;
    case 'bare bulb': {
      head(3.5);
      solid(
        turned(20, 0, 2 * Math.PI).map((turn) => [
          Math.round((x + 4.5 * Math.cos(turn)) * 100) / 100,
          Math.round((y + 4.5 * Math.sin(turn)) * 100) / 100,
        ]),
      );
      break;
    }
    case 'umbrella': {
      // The canopy bulges away from the sitter; its shaft runs to the head behind it.
      head(half * 0.5 + 8);
      line('object', [at(0, 0), at(-half * 0.5 - 8, 0)]);
      solid(turned(14, -1, 1).map((v) => at(-half * 0.45 * (1 - v * v), half * v)));
      break;
    }
    default: {
      const [deep, back] = BODY[light.source];
      const depth = Math.max(deep * half, 4);
      head(depth);
      // Cloth has a rim; metal has none.
      const rim = light.source === 'softbox' || light.source === 'strip' ? depth * 0.35 : 0;
      solid([
        at(0, -half),
        at(-rim, -half),
        at(-depth, -back * half),
        at(-depth, back * half),
        at(-rim, half),
        at(0, half),
      ]);
      // Cells in front of the reflector; the plate before a dish's bulb.
      if (light.source === 'grid')
        for (const v of [-0.5, 0, 0.5])
          line('dimension', [at(0, v * half), at(-Math.min(depth, 5), v * half * 0.9)]);
      if (light.source === 'beauty dish')
        line('dimension', [at(-depth * 0.35, -0.25 * half), at(-depth * 0.35, 0.25 * half)]);
    }
  }
  line('light', [at(0, -half), at(0, half)]);
  const xs = drawn.map(([u]) => u);
  const ys = drawn.map(([, v]) => v);
  return drawn.length > 0
    ? [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
    : [x, y, x, y];
};
