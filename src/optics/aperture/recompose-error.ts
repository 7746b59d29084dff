import { InputError } from '../../formula/errors.ts';
import type { Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format } from '../lens/frame.ts';
import { focalLength, subjectDistance } from '../lens/inputs.ts';
import { circle, fNumber } from './inputs.ts';
import { marked, marks } from './marks.ts';
import { coneOf, sharpDepths } from './pupil.ts';

/** The angle the camera turns after focusing: given, or from how far the eye moves across the frame. */
const turned = (s: Length, angle: number | undefined, shift: number | undefined): number =>
  angle ?? Math.atan2(shift ?? 0, s);

export default defineFormula({
  id: 'recompose-error',
  title: 'Focus and recompose',
  tex: String.raw`\Delta = s\,(1 - \cos\psi)`,
  spoken: 'delta equals s times one minus the cosine of psi',
  inputs: {
    format: { ...format, optional: true },
    f: { ...focalLength, optional: true },
    N: { ...fNumber, optional: true },
    s: subjectDistance,
    angle: {
      name: 'angle',
      tex: String.raw`\psi`,
      unit: 'deg',
      range: [0, 85],
      span: [0, 30],
      start: 8,
      optional: true,
      means: 'how far the camera turns after focusing on the eye',
    },
    shift: {
      name: 'shift',
      tex: 'x',
      unit: 'm',
      range: [0, 100],
      span: [0, 1],
      start: 0.3,
      optional: true,
      means: 'or how far, at the child, the middle of the frame moves away from the eye',
    },
    sway: {
      name: 'sway',
      tex: 'w',
      unit: 'mm',
      range: [0, 5000],
      span: [0, 100],
      start: 20,
      default: 0,
      means: 'how far the child leans towards or away from the lens after the focus is set',
    },
    c: { ...circle, optional: true },
    marks,
  },
  ways: [{ groups: [['angle'], ['shift']] }],
  outputs: {
    error: {
      name: 'focus error',
      tex: String.raw`\Delta`,
      unit: 'mm',
      digits: { significant: 2 },
      means: 'how far behind the eye the focus falls',
    },
    share: {
      name: 'depth share',
      unit: '%',
      digits: { decimals: 0 },
      means:
        'the share of the depth in front of the focus that this uses up; over 100 % the eye is soft',
    },
    swayShare: {
      name: 'sway share',
      unit: '%',
      digits: { decimals: 0 },
      means: 'the same for the sway alone',
    },
  },
  compute({ f, N, s, angle, shift, sway, c, marks: mode }) {
    if (s === Infinity)
      throw new InputError(
        'The subject distance must be finite here. Try 2.2 m.',
        'subject-distance',
      );
    // Written with the half angle, so that a small turn keeps its digits.
    const error = 2 * s * Math.sin(turned(s, angle, shift) / 2) ** 2;
    const depth =
      f === undefined || N === undefined || c === undefined
        ? undefined
        : sharpDepths(coneOf({ f, N: marked(N, mode), s, p: 1 as Ratio }), c).ahead;
    return {
      error: error as Length,
      share: depth === undefined ? undefined : ((error / depth) as Ratio),
      swayShare: depth === undefined ? undefined : ((sway / depth) as Ratio),
    };
  },
  slips: {
    'along-old-axis': {
      compute: ({ s, angle, shift }) => ({
        error: (s * (1 / Math.cos(turned(s, angle, shift)) - 1)) as Length,
      }),
      say: 'That is how much farther the plane lies along the old line of sight. The focus error is taken along the new one: s(1 − cos ψ).',
    },
  },
  worked: {
    tex: String.raw`\Delta = \val{s} \times (1 - \cos \val{angle}) = \val{error}`,
    values: ({ s, angle, shift }, { error }) => ({
      s: { value: s, unit: 'm', digits: { significant: 4 } },
      angle: { value: turned(s, angle, shift), unit: 'deg', digits: { significant: 3 } },
      error: { value: error, unit: 'mm', digits: { significant: 2 } },
    }),
  },
  model:
    'The camera turns about the lens after focusing; the plane in focus is flat and turns with it.',
  breaks:
    'A lens whose field curves towards the camera loses less, one that curves away loses more; turning about the body instead of the lens moves the lens too.',
  sources: ['jacobson-lens-faq'],
});
