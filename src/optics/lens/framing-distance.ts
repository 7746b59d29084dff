import type { Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format, framed, orientation, printAspect } from './frame.ts';
import { focalLength, frameHeight } from './inputs.ts';
import { sensorToSubject, subjectDistance } from './thin-lens.ts';
import { plain } from './worked.ts';

export default defineFormula({
  id: 'framing-distance',
  title: 'Framing distance',
  tex: String.raw`s = f \left( 1 + \frac{1}{m} \right),\qquad m = \frac{h}{H}`,
  spoken: 's equals f times one plus one over m, where m equals h over capital H',
  inputs: { format, orientation, aspect: printAspect, f: focalLength, H: frameHeight },
  outputs: {
    s: {
      name: 'subject distance',
      tex: 's',
      unit: 'm',
      digits: 3,
      means: 'from the lens’s front principal plane to the child',
    },
    m: {
      name: 'magnification',
      tex: 'm',
      unit: '1',
      digits: 3,
      means: 'the image’s size over the child’s',
    },
    W: {
      name: 'frame width',
      tex: 'W',
      unit: 'm',
      digits: 3,
      means: 'how much of the set the frame takes in across',
    },
    v: {
      name: 'image distance',
      tex: 'v',
      unit: 'mm',
      digits: 4,
      means: 'from the rear principal plane to the sensor, f(1 + m)',
    },
    D: {
      name: 'sensor to subject',
      tex: 'D',
      unit: 'm',
      digits: 3,
      means: 'from the sensor to the child, f(2 + m + 1/m)',
    },
  },
  symbols: [
    {
      tex: 'h',
      means: 'the height of the frame on the sensor, as held and as cropped for the print',
    },
  ],
  compute({ format: size, orientation: held, aspect, f, H }) {
    const { across, up } = framed({ format: size, orientation: held, aspect });
    const m = (up / H) as Ratio;
    return {
      s: subjectDistance({ f, m }),
      m,
      W: (across / m) as Length,
      v: (f * (1 + m)) as Length,
      D: sensorToSubject({ f, m }),
    };
  },
  solve: {
    f: {
      s: ({ format: size, orientation: held, aspect, H }, s) =>
        (s / (1 + H / framed({ format: size, orientation: held, aspect }).up)) as Length,
    },
  },
  slips: {
    pinhole: {
      compute: ({ format: size, orientation: held, aspect, f, H }) => ({
        s: ((f * H) / framed({ format: size, orientation: held, aspect }).up) as Length,
      }),
      say: 'That is f/m. The subject is one focal length farther off: f(1 + 1/m).',
    },
    'wrong-side': {
      compute: ({ format: { height }, f, H }) => ({ s: (f * (1 + H / height)) as Length }),
      say: 'That takes the short side of the sensor as the height; an upright camera puts the long side upright.',
    },
  },
  worked: {
    tex: String.raw`s = \val{f} \times \left( 1 + \frac{\val{H}}{\val{h}} \right) = \val{s}`,
    values: ({ format: size, orientation: held, aspect, f, H }, { s }) => ({
      f: plain(f, 'mm'),
      H: plain(H, 'mm'),
      h: plain(framed({ format: size, orientation: held, aspect }).up, 'mm'),
      s: { value: s, unit: 'm', digits: 3 },
    }),
  },
  model:
    'Thin lens in focus on the child; distances from its front principal plane unless named otherwise.',
  breaks:
    'A real lens’s principal planes lie somewhere inside it, a few centimetres from the ring you measure to; a lens that shortens at close focus must come nearer than this.',
  sources: ['navedtra-14209', 'openstax-college-physics'],
});
