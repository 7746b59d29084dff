import type { Length, Quantity } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { G } from '../gravity.ts';

type Speed = Quantity<'speed'>;

/**
 * Speed after falling from rest, √(2gh).
 * Model: no air, no grip, no step. Valid: h ≥ 0. Source: OpenStax, College Physics, 7.3.
 * @example fallSpeed(m(0.45)) // 2.97 m/s
 */
export const fallSpeed = (h: Length): Speed => Math.sqrt(2 * G * h) as Speed;

export default defineFormula({
  id: 'platform-drop',
  title: 'Falling off a platform',
  tex: String.raw`v = \sqrt{2\,g\,h}`,
  spoken: 'v equals the square root of two g h',
  inputs: {
    h: {
      name: 'platform height',
      tex: 'h',
      unit: 'm',
      range: [0, 10],
      span: [0, 1],
      start: 0.2,
      means: 'from the floor to what the child sits or stands on',
    },
    head: {
      name: 'head height',
      tex: 'h_h',
      unit: 'm',
      range: [0, 3],
      span: [0.3, 1.2],
      start: 0.51,
      optional: true,
      means:
        'how high the head is above that: seated 0.51 m (from memory), standing 0.87 m at two years',
    },
  },
  outputs: {
    foot: {
      name: 'foot speed',
      tex: 'v',
      unit: 'm/s',
      digits: { significant: 3 },
      means: 'how fast a foot that slips off comes to the floor',
    },
    headSpeed: {
      name: 'head speed',
      tex: 'v_h',
      unit: 'm/s',
      digits: { significant: 3 },
      means: 'how fast a head that falls freely does',
    },
  },
  compute({ h, head }) {
    return {
      foot: fallSpeed(h),
      headSpeed: head === undefined ? undefined : fallSpeed((h + head) as Length),
    };
  },
  slips: {
    'head-forgotten': {
      compute: ({ h }) => ({ headSpeed: fallSpeed(h) }),
      say: 'That lets the head fall from the platform only. It begins higher: add its own height.',
    },
  },
  worked: {
    tex: String.raw`v = \sqrt{2 \times 9.81\,\mathrm{m/s^2} \times \val{h}} = \val{v}`,
    values: ({ h }, { foot }) => ({
      h: { value: h, unit: 'm', digits: { decimals: 2 } },
      v: { value: foot, unit: 'm/s', digits: { significant: 3 } },
    }),
  },
  symbols: [{ tex: 'g', means: 'the acceleration of free fall, 9.806 65 m/s²' }],
  model:
    'Free fall from rest, without air. It is why platforms are low, matted and spotted: speed grows with the root of height, and a head always begins higher than a foot.',
  breaks:
    'A fall is no free fall: children tumble, grasp and turn. No injury, force or permitted height follows from a speed; tested surfacing and the standards for it (EN 1177, ASTM F1292) and your local rules decide. A grown-up within arm’s reach does more than any number.',
  sources: ['openstax-college-physics'],
});
