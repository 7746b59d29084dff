import type { FNumber, Length } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format } from '../lens/frame.ts';
import { focalLength, subjectDistance } from '../lens/inputs.ts';
import { fromLens, lensOffset, measuredFrom } from '../lens/measured-from.ts';
import { circle, fNumber, pupil, second, third } from './inputs.ts';
import { marked, marks } from './marks.ts';
import { coneOf, sharpDepths } from './pupil.ts';

/**
 * Hyperfocal distance: focus here and all from half of it to infinity is acceptably sharp.
 *
 * Model: thin lens, blur disc c in the image. Valid: f, N and c above 0. From the front principal plane.
 * @example as(hyperfocal({ f: mm(50), N: fNumber(8), c: mm(0.03) }), 'mm') // 10467
 */
export const hyperfocal = ({
  f,
  N,
  c,
}: {
  readonly f: Length;
  readonly N: FNumber;
  readonly c: Length;
}): Length => ((f * f) / (N * c) + f) as Length;

export default defineFormula({
  id: 'depth-of-field',
  title: 'Depth of field',
  tex: String.raw`s_{n,f} = e + \frac{(s - e)\,m D}{m D \pm c}\,,\qquad D = \frac{f}{N}\,,\qquad e = f \left( 1 - \frac{1}{p} \right)`,
  spoken:
    's near and s far equal e plus s minus e times m D, over m D plus or minus c, where D equals f over N and e equals f times one minus one over p',
  inputs: {
    format: { ...format, optional: true },
    f: focalLength,
    N: fNumber,
    s: subjectDistance,
    c: circle,
    p: pupil,
    N2: second,
    N3: third,
    marks,
    from: measuredFrom,
    o: lensOffset,
  },
  outputs: {
    near: {
      name: 'near',
      tex: 's_n',
      unit: 'm',
      digits: { decimals: 3 },
      means: 'the nearest distance that is sharp',
    },
    far: {
      name: 'far',
      tex: 's_f',
      unit: 'm',
      digits: { decimals: 3 },
      means: 'the farthest distance that is sharp',
    },
    total: { name: 'total', tex: 's_f - s_n', unit: 'cm', digits: 3, means: 'the depth in all' },
    inFront: {
      name: 'in front',
      tex: 's - s_n',
      unit: 'cm',
      digits: 3,
      means: 'how much of it lies ahead of the plane in focus',
    },
    behind: {
      name: 'behind',
      tex: 's_f - s',
      unit: 'cm',
      digits: 3,
      means: 'how much lies behind it',
    },
    H: {
      name: 'hyperfocal',
      tex: 'H',
      unit: 'm',
      digits: 3,
      means: 'focused here, everything from half of it to infinity is sharp',
    },
  },
  symbols: [
    { tex: 'm', means: 'the magnification, f/(s − f)' },
    { tex: 'D', means: 'the diameter of the entrance pupil' },
    {
      tex: 'e',
      means:
        'from the front principal plane to the entrance pupil, towards the subject; 0 for p = 1',
    },
  ],
  compute({ f, N, s, c, p, marks: mode, from, o }) {
    const stop = marked(N, mode);
    const cone = coneOf({ f, N: stop, s: fromLens({ f, s, from, o }), p });
    // Focused at infinity there is no plane to count from: the near limit is the lens's own hyperfocal distance.
    if (cone.reach === Infinity) {
      const near = ((f * f) / (stop * c) + cone.e + (from === 'sensor' ? o : 0)) as Length;
      const endless = Infinity as Length;
      return {
        near,
        far: endless,
        total: endless,
        inFront: endless,
        behind: endless,
        H: hyperfocal({ f, N: stop, c }),
      };
    }
    const { ahead, behind } = sharpDepths(cone, c);
    return {
      near: (s - ahead) as Length,
      far: (s + behind) as Length,
      total: (ahead + behind) as Length,
      inFront: ahead,
      behind,
      H: hyperfocal({ f, N: stop, c }),
    };
  },
  slips: {
    thirds: {
      compute: ({ f, N, s, c, p }) => {
        const { ahead, behind } = sharpDepths(coneOf({ f, N, s, p }), c);
        return { inFront: ((ahead + behind) / 3) as Length };
      },
      say: 'A third in front holds at one distance only. Near by, the depth is shared almost evenly.',
    },
    'pupil-as-f': {
      compute: ({ f, N, s, c }) => ({ total: ((2 * N * c * s * s) / (f * f)) as Length }),
      say: 'That is the shortcut 2Ncs²/f². It counts s where s − f belongs, and is too long close up.',
    },
  },
  worked: {
    tex: String.raw`s_n = \val{e} + \frac{\val{reach} \times \val{disc}}{\val{disc2} + \val{c}} = \val{near}`,
    values: ({ f, N, s, c, p, marks: mode, from, o }, { near }) => {
      const { D, m, e, reach } = coneOf({
        f,
        N: marked(N, mode),
        s: fromLens({ f, s, from, o }),
        p,
      });
      const disc = { value: m * D, unit: 'mm', digits: { significant: 3 } } as const;
      return {
        e: { value: from === 'sensor' ? e + o : e, unit: 'mm', digits: { decimals: 1 } },
        reach: { value: reach, unit: 'm', digits: { decimals: 3 } },
        disc,
        disc2: disc,
        c: { value: c, unit: 'mm', digits: { significant: 3 } },
        near: { value: near, unit: 'm', digits: { decimals: 3 } },
      };
    },
  },
  model:
    'Thin lens with one entrance pupil; a point is sharp while its blur disc on the sensor is no wider than c. Distances from the front principal plane, or from the sensor if chosen.',
  breaks:
    'Sharpness does not end at a line: c is a convention. Makers’ tables follow the true focal length and count from the sensor; a lens that shortens at close focus has more depth than this.',
  sources: ['hyperfocal-wikipedia', 'euler-dof'],
});
