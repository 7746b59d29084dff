import type { Angle, Length } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { diagonal, format } from './frame.ts';
import { focalLength, subjectDistance } from './inputs.ts';
import { fromLens, lensOffset, measuredFrom } from './measured-from.ts';
import { imageDistance } from './thin-lens.ts';

/**
 * The angle a side of the frame takes in.
 *
 * Model: rectilinear thin lens with the sensor at the image distance v; v is f at infinity and f(1 + m) nearer.
 * Valid: d and v above 0.
 * Source: see the record.
 * @example as(angleOfView({ d: mm(36), v: mm(50) }), 'deg') // 39.6
 */
export const angleOfView = ({ d, v }: { readonly d: Length; readonly v: Length }): Angle =>
  (2 * Math.atan(d / (2 * v))) as Angle;

/** The image distance at which a side takes in an angle: undoes `angleOfView`. */
export const imageDistanceFor = ({
  d,
  angle,
}: {
  readonly d: Length;
  readonly angle: Angle;
}): Length => (d / (2 * Math.tan(angle / 2))) as Length;
import { plain } from './worked.ts';

export default defineFormula({
  id: 'angle-of-view',
  title: 'Angle of view',
  tex: String.raw`\theta = 2\,\arctan\,\frac{d}{2 f (1 + m)}\,,\qquad m = \frac{f}{s - f}`,
  spoken:
    'theta equals two times the arctangent of d over two f times one plus m, where m equals f over s minus f',
  inputs: {
    format,
    f: focalLength,
    s: { ...subjectDistance, default: Infinity },
    from: measuredFrom,
    o: lensOffset,
  },
  outputs: {
    horizontal: {
      name: 'horizontal',
      tex: String.raw`\theta_h`,
      unit: 'deg',
      digits: 3,
      means: 'across the longer side of the format',
    },
    vertical: {
      name: 'vertical',
      tex: String.raw`\theta_v`,
      unit: 'deg',
      digits: 3,
      means: 'across the shorter side',
    },
    diagonal: {
      name: 'diagonal',
      tex: String.raw`\theta_d`,
      unit: 'deg',
      digits: 3,
      means: 'from corner to corner',
    },
  },
  symbols: [
    {
      tex: 'd',
      means: 'the side of the format the angle is taken across: longer, shorter or diagonal',
    },
    { tex: 'm', means: 'the magnification; 0 when focused at infinity' },
  ],
  compute({ format: { width, height }, f, s, from, o }) {
    const v = imageDistance({ f, s: fromLens({ f, s, from, o }) });
    return {
      horizontal: angleOfView({ d: width, v }),
      vertical: angleOfView({ d: height, v }),
      diagonal: angleOfView({ d: diagonal(width, height), v }),
    };
  },
  slips: {
    'half-angle': {
      compute: ({ format: { width }, f }) => ({ horizontal: Math.atan(width / (2 * f)) as Angle }),
      say: 'That is half the angle: from the axis to one edge of the frame.',
    },
  },
  worked: {
    tex: String.raw`\theta_h = 2\,\arctan\,\frac{\val{d}}{2 \times \val{f} \times (1 + \val{m})} = \val{horizontal}`,
    values: ({ format: { width }, f, s, from, o }, { horizontal }) => ({
      d: plain(width, 'mm'),
      f: plain(f, 'mm'),
      m: {
        value: imageDistance({ f, s: fromLens({ f, s, from, o }) }) / f - 1,
        unit: '1',
        digits: { decimals: 3 },
      },
      horizontal: { value: horizontal, unit: 'deg', digits: 3 },
    }),
  },
  model:
    'Thin rectilinear lens focused at s (infinity unless given), s counted from its front principal plane.',
  breaks:
    'Lenses that shorten their focal length at close focus see wider than this; fisheye lenses do not follow it at all; makers round the angle, and a lens engraved 85 mm may be 83 or 87.',
  sources: ['navedtra-14209'],
});
