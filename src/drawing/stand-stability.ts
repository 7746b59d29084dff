import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula, { momentsAbout } from '../sitting/safety/stand-stability.ts';
import { arrow } from './arrow.ts';
import type { Point } from './clip.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [TOP, TALL] = [30, 150];

/** The stand from above with the line it tips over, and from the side with the pull that tips it; to one scale. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const stand = given as unknown as Parameters<typeof formula.compute>[0];
  const { R, legs, boom, direction, place, ballast, pull, headHeight, head, modifier } = stand;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const n = Math.max(3, Math.round(legs));
  const tall = Math.max(headHeight ?? 1.8, pull ?? 0) * 1.05;

  const wide = Math.max(R, boom, place) * 1.15;
  const scale = scaleFor(Math.min((WIDTH - 40) / (4 * wide), TALL / Math.max(2 * wide, tall)));
  // From above: a leg straight to the right is at 0; the boom at its direction.
  const [cx, cy] = [20 + wide * scale, TOP + TALL / 2];
  const at = (angle: number, r: number): Point => [
    cx + Math.cos(angle) * r * scale,
    cy - Math.sin(angle) * r * scale,
  ];
  const feet = Array.from({ length: n }, (_, k) => at((2 * Math.PI * k) / n, R));
  on.area('ground', feet);
  on.ring('construction', feet);
  for (const foot of feet) on.line('object', [[cx, cy], foot]);
  const worst = momentsAbout({ ...stand, legs: n }).edge;
  // Seen from the side it goes over under the boom, or, with too much ballast far out, the other way.
  const side = Math.cos(direction - ((2 * worst + 1) * Math.PI) / n) < -1e-9 ? -1 : 1;
  const edge = [feet[worst] ?? [cx, cy], feet[(worst + 1) % n] ?? [cx, cy]] as const;
  on.line('emphasis', edge);
  if (boom > 0) on.line('object', [[cx, cy], at(direction, boom)]);
  const [hx, hy] = at(direction, boom);
  if (head + modifier > 0) disc(on, 'light', hx, hy, 6, true);
  const [bx, by] = at(direction + Math.PI, place);
  if (ballast > 0) on.area('figure', corners([bx - 5, by - 5, bx + 5, by + 5]));
  on.text(cx, TOP - 14, 'from above', 'middle');

  // From the side, the boom to the right.
  const [sx, floor] = [WIDTH - 20 - wide * scale, TOP + TALL];
  const up = (metres: number): number => floor - metres * scale;
  const top = headHeight ?? 1.8;
  on.line('ground', [
    [sx - wide * scale, floor],
    [sx + wide * scale, floor],
  ]);
  const apothem = R * Math.cos(Math.PI / n);
  for (const foot of [0 - R, apothem])
    on.line('object', [
      [sx, up(Math.min(0.45 * top, R))],
      [sx + side * foot * scale, floor],
    ]);
  on.line('object', [
    [sx, floor],
    [sx, up(top)],
  ]);
  on.line('object', [
    [sx, up(top)],
    [sx + boom * scale, up(top)],
  ]);
  if (head + modifier > 0) disc(on, 'light', sx + boom * scale, up(top), 6, true);
  if (ballast > 0) {
    const x = sx - place * scale;
    if (place > 0)
      on.line('object', [
        [sx, up(top)],
        [x, up(top)],
      ]);
    const y = place > 0 ? up(top) + 14 : floor - 12;
    on.area('figure', corners([x - 5, y - 5, x + 5, y + 5]));
  }
  on.line('emphasis', [
    [sx + side * apothem * scale, floor - 8],
    [sx + side * apothem * scale, floor + 6],
  ]);
  if (pull !== undefined) arrow(on, 'emphasis', sx, up(pull), sx + side * 40, up(pull));
  on.text(sx, TOP - 14, 'from the side', 'middle');
  on.text(8, floor + 24, 'it tips over the heavy line', 'start');
  if (pull !== undefined)
    on.text(WIDTH - 8, floor + 24, `pull ${show('pullForce')}`, 'end', 'emphasis');
  bar(on, 8, floor + 48, scale);
  return {
    width: WIDTH,
    height: floor + 60,
    marks: on.marks,
    says: `The stand from above and from the side, to one scale. It tips over the line between two feet, ${on.length(apothem, 3)} from the column: ${show('overturning')} against ${show('restoring')}${pull === undefined ? '' : `; a pull of ${show('pullForce')} at ${on.length(pull)} tips it`}.`,
    table: {
      head: ['', 'value'],
      rows: [
        ['turns it over', show('overturning')],
        ['holds it back', show('restoring')],
        ['counterweight needed', show('counterweight')],
        ['pull that tips it', show('pullForce')],
      ],
    },
  };
};
