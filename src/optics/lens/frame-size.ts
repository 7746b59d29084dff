import type { Length } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format, framed, orientation, printAspect } from './frame.ts';
import { focalLength, subjectDistance } from './inputs.ts';
import { fromLens, lensOffset, measuredFrom } from './measured-from.ts';
import { magnification } from './thin-lens.ts';
import { plain } from './worked.ts';

export default defineFormula({
  id: 'frame-size',
  title: 'Frame size',
  tex: String.raw`H = \frac{h}{m}\,,\qquad W = \frac{w}{m}\,,\qquad m = \frac{f}{s - f}`,
  spoken: 'capital H equals h over m, capital W equals w over m, where m equals f over s minus f',
  inputs: {
    format,
    orientation,
    aspect: printAspect,
    f: focalLength,
    s: subjectDistance,
    from: measuredFrom,
    o: lensOffset,
  },
  outputs: {
    W: {
      name: 'frame width',
      tex: 'W',
      unit: 'm',
      digits: 3,
      means: 'how much of the set the frame takes in across, at the child',
    },
    H: {
      name: 'frame height',
      tex: 'H',
      unit: 'm',
      digits: 3,
      means: 'the same from bottom to top',
    },
    m: {
      name: 'magnification',
      tex: 'm',
      unit: '1',
      digits: 3,
      means: 'the image’s size over the child’s',
    },
  },
  symbols: [
    {
      tex: 'w, h',
      means:
        'the width and height of the frame on the sensor, as held and as cropped for the print',
    },
  ],
  compute({ format: size, orientation: held, aspect, f, s, from, o }) {
    const { across, up } = framed({ format: size, orientation: held, aspect });
    const m = magnification({ f, s: fromLens({ f, s, from, o }) });
    return { W: (across / m) as Length, H: (up / m) as Length, m };
  },
  slips: {
    pinhole: {
      compute: ({ format: size, orientation: held, aspect, f, s }) => ({
        H: ((framed({ format: size, orientation: held, aspect }).up * s) / f) as Length,
      }),
      say: 'That divides s by f. The thin lens divides s − f by f, so the frame is a little smaller.',
    },
  },
  worked: {
    tex: String.raw`H = \val{h} \times \frac{\val{s} - \val{f}}{\val{f2}} = \val{H}`,
    values: ({ format: size, orientation: held, aspect, f, s, from, o }, { H }) => ({
      h: plain(framed({ format: size, orientation: held, aspect }).up, 'mm'),
      s: plain(fromLens({ f, s, from, o }), 'mm'),
      f: plain(f, 'mm'),
      f2: plain(f, 'mm'),
      H: { value: H, unit: 'm', digits: 3 },
    }),
  },
  model:
    'Thin lens in focus on the child, s counted from its front principal plane (or from the sensor, if chosen).',
  breaks:
    'A lens that focuses by moving inner groups changes its focal length as it comes near and frames wider than this; beyond a metre or so from a portrait lens the difference is small.',
  sources: ['openstax-college-physics', 'navedtra-14209'],
});
