import { InputError } from '../../formula/errors.ts';
import type { Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format, framed, orientation } from '../lens/frame.ts';
import { backdropDistance, focalLength, subjectDistance } from '../lens/inputs.ts';
import { fromLens, lensOffset, measuredFrom } from '../lens/measured-from.ts';
import { fNumber, pupil, second, third } from './inputs.ts';
import { marked, marks } from './marks.ts';
import { blurAt, coneOf } from './pupil.ts';

export default defineFormula({
  id: 'background-blur',
  title: 'Background blur',
  tex: String.raw`\beta = m D\,\frac{b}{s - e + b}\,,\qquad D = \frac{f}{N}`,
  spoken: 'beta equals m D times b over s minus e plus b, where D equals f over N',
  inputs: {
    format,
    orientation,
    f: focalLength,
    N: fNumber,
    s: subjectDistance,
    b: { ...backdropDistance, range: [0, Infinity], optional: true },
    a: {
      name: 'ahead distance',
      tex: 'a',
      unit: 'm',
      range: [0, 1000],
      span: [0, 2],
      start: 0.5,
      optional: true,
      means: 'from the child forward to a thing between it and the lens',
    },
    H: {
      name: 'print height',
      tex: 'H_p',
      unit: 'cm',
      range: [0.1, 10000],
      span: [10, 100],
      start: 30,
      optional: true,
      means: 'the print’s height, from the whole height of the frame as held',
    },
    p: pupil,
    N2: second,
    N3: third,
    marks,
    from: measuredFrom,
    o: lensOffset,
  },
  outputs: {
    sensor: {
      name: 'sensor blur',
      tex: String.raw`\beta`,
      unit: 'mm',
      digits: 3,
      means: 'the diameter on the sensor of a point of light on the backdrop',
    },
    share: {
      name: 'frame share',
      tex: String.raw`\beta/h`,
      unit: '%',
      digits: { significant: 2 },
      means: 'the same as a share of the frame’s height',
    },
    subject: {
      name: 'subject blur',
      unit: 'mm',
      digits: 3,
      means: 'the same laid over the child: a disc this wide',
    },
    print: { name: 'print blur', unit: 'mm', digits: 3, means: 'the same on the print' },
    backdrop: {
      name: 'backdrop blur',
      tex: 'Db/(s - e)',
      unit: 'mm',
      digits: 3,
      means: 'the same on the backdrop itself: creases and brush strokes much narrower are lost',
    },
    foreground: {
      name: 'foreground blur',
      unit: 'mm',
      digits: 3,
      means: 'the diameter on the sensor of a point ahead of the child',
    },
  },
  symbols: [
    { tex: 'm', means: 'the magnification, f/(s − f)' },
    { tex: 'D', means: 'the diameter of the entrance pupil' },
    { tex: 'e', means: 'from the front principal plane to the entrance pupil; 0 for p = 1' },
    { tex: 'h', means: 'the height of the frame on the sensor, as held' },
  ],
  compute({ format: size, orientation: held, f, N, s, b, a, H, p, marks: mode, from, o }) {
    const near = fromLens({ f, s, from, o });
    if (near === Infinity)
      throw new InputError(
        'The subject distance must be finite here: blur is told against the child in focus. Try 2.2 m.',
        'subject-distance',
      );
    const cone = coneOf({ f, N: marked(N, mode), s: near, p });
    const { up } = framed({ format: size, orientation: held, aspect: null });
    const onSensor = (behind: Length): Length => (cone.m * blurAt(cone, behind)) as Length;
    const subject = b === undefined ? undefined : blurAt(cone, b);
    const sensor = b === undefined ? undefined : onSensor(b);
    return {
      sensor,
      share: sensor === undefined ? undefined : ((sensor / up) as Ratio),
      subject,
      print: sensor === undefined || H === undefined ? undefined : (((sensor * H) / up) as Length),
      backdrop: b === undefined ? undefined : (((cone.D * b) / cone.reach) as Length),
      foreground: a === undefined ? undefined : onSensor((-1 * a) as Length),
    };
  },
  slips: {
    'at-infinity': {
      compute: ({ f, N, s }) => ({ sensor: ((f * f) / (N * (s - f))) as Length }),
      say: 'That is the blur of a backdrop infinitely far off. Yours is near: multiply by b/(s + b).',
    },
    radius: {
      compute: ({ f, N, s, b }) =>
        b === undefined
          ? {}
          : { sensor: (((f * f) / (N * (s - f))) * (b / (s + b)) * 0.5) as Length },
      say: 'That is the radius of the disc. The disc is as wide as its diameter.',
    },
  },
  worked: {
    tex: String.raw`\beta = \val{m} \times \val{D} \times \frac{\val{b}}{\val{away}} = \val{sensor}`,
    values: ({ f, N, s, b, p, marks: mode, from, o }, { sensor }) => {
      const cone = coneOf({ f, N: marked(N, mode), s: fromLens({ f, s, from, o }), p });
      return {
        m: { value: cone.m, unit: '1', digits: { significant: 3 } },
        D: { value: cone.D, unit: 'mm', digits: { significant: 3 } },
        b: { value: b, unit: 'm', digits: { significant: 3 } },
        away: {
          value: b === undefined ? b : cone.reach + b,
          unit: 'm',
          digits: { significant: 4 },
        },
        sensor: { value: sensor, unit: 'mm', digits: 3 },
      };
    },
  },
  model:
    'A point out of focus becomes a disc, evenly lit: similar triangles from one entrance pupil, thin lens.',
  breaks:
    'Real discs have brighter or softer rims, become lemon-shaped towards the corners and show the aperture’s blades; this gives their width, not their looks.',
  sources: ['circle-of-confusion-wikipedia'],
});
