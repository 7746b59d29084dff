import type { Length } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { childOffset } from './inputs.ts';

export default defineFormula({
  id: 'spotter-reach',
  title: 'Spotter’s reach',
  tex: String.raw`g = \frac{W}{2} - |e|\,,\qquad g + k \le r`,
  spoken:
    'g equals half of capital W minus the absolute value of e; within reach when g plus k is at most r',
  inputs: {
    W: {
      name: 'frame width',
      tex: 'W',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.2, 3],
      start: start('frame-width'),
      means: 'how much the frame takes in across, at the child',
    },
    e: childOffset,
    k: {
      name: 'body clearance',
      tex: 'k',
      unit: 'm',
      range: [0, 10],
      span: [0, 0.6],
      start: start('body-clearance'),
      means: 'from the frame’s edge to the spotter’s shoulder, so that no sleeve shows',
    },
    r: {
      name: 'reach',
      tex: 'r',
      unit: 'm',
      range: [0.1, 2],
      span: [0.3, 1],
      start: start('reach'),
      means: 'from the spotter’s shoulder to a hand that can hold on: measure it',
    },
  },
  outputs: {
    gap: {
      name: 'gap',
      tex: 'g',
      unit: 'm',
      digits: { decimals: 2 },
      means: 'from the child to the nearer edge of the frame',
    },
    within: {
      name: 'within reach',
      kind: 'yes-no',
      means: 'whether the spotter, out of the picture, can still hold the child',
    },
  },
  compute({ W, e, k, r }) {
    const gap = (W / 2 - Math.abs(e)) as Length;
    // A hair of room, so that 0.30 + 0.10 is within 0.40.
    return { gap, within: gap + k <= r * (1 + 1e-12) };
  },
  slips: {
    'whole-width': {
      compute: ({ W, e }) => ({ gap: (W - Math.abs(e)) as Length }),
      say: 'That is the whole frame. The child sits near its middle: half the width counts.',
    },
  },
  worked: {
    tex: String.raw`g = \frac{\val{W}}{2} - \val{e} = \val{gap}`,
    values: ({ W, e }, { gap }) => ({
      W: { value: W, unit: 'm', digits: { decimals: 2 } },
      e: { value: Math.abs(e), unit: 'm', digits: { decimals: 2 } },
      gap: { value: gap, unit: 'm', digits: { decimals: 2 } },
    }),
  },
  model:
    'The child is one point in the plane in focus; the spotter stands beside the frame in that same plane.',
  breaks:
    'A lunging child covers an arm’s length faster than an adult reacts: reach is the least that is needed, not a promise. Where the child does not sit still, keep a hand on and leave it in the picture.',
  sources: [],
});
