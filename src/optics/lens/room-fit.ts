import type { Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { format, framed, orientation, printAspect } from './frame.ts';
import { backdropDistance, focalLength, frameHeight, roomWidth } from './inputs.ts';
import { sensorToSubject, subjectDistance } from './thin-lens.ts';
import { plain } from './worked.ts';

/** Whether a thing fits; a hair of room, so that 1.30 + 2 × 1.30 is within 3.90. */
const within = (x: number, room: number): boolean => x <= room * (1 + 1e-12);

export default defineFormula({
  id: 'room-fit',
  title: 'Fit in the room',
  tex: String.raw`L = a + b + f \left( 2 + m + \frac{1}{m} \right) + c\,,\qquad m = \frac{h}{H}`,
  spoken:
    'capital L equals a plus b plus f times two plus m plus one over m, plus c, where m equals h over capital H',
  inputs: {
    format,
    orientation,
    aspect: printAspect,
    H: frameHeight,
    f: { ...focalLength, optional: true },
    b: { ...backdropDistance, optional: true },
    a: {
      name: 'backdrop clearance',
      tex: 'a',
      unit: 'm',
      range: [0, 100],
      span: [0, 1.5],
      start: start('backdrop-clearance'),
      optional: true,
      means: 'from the wall to the backdrop: its stands, its roll, a light behind it',
    },
    c: {
      name: 'camera room',
      tex: 'c',
      unit: 'm',
      range: [0, 100],
      span: [0, 2],
      start: start('camera-room'),
      optional: true,
      means: 'from the sensor back to the wall: the photographer, who must be able to move',
    },
    roomLength: {
      name: 'room length',
      tex: 'L_r',
      unit: 'm',
      range: [0.5, 1000],
      span: [2, 12],
      start: start('room-length'),
      optional: true,
      means: 'wall to wall, along the line of sight',
    },
    roomWidth,
    ceiling: {
      name: 'ceiling',
      tex: 'h_r',
      unit: 'm',
      range: [0.5, 100],
      span: [2, 5],
      start: start('ceiling'),
      optional: true,
      means: 'floor to ceiling',
    },
    k: {
      name: 'light clearance',
      tex: 'k',
      unit: 'm',
      range: [0, 100],
      span: [0, 2],
      start: start('light-clearance'),
      optional: true,
      means: 'what a light with its stand needs beside the frame, and above it',
    },
  },
  outputs: {
    longest: {
      name: 'longest focal length',
      tex: String.raw`f_{\max}`,
      unit: 'mm',
      digits: { significant: 2 },
      means: 'the longest lens the room’s length allows at this framing',
    },
    needed: {
      name: 'length needed',
      tex: 'L',
      unit: 'm',
      digits: 3,
      means: 'wall to wall, for this lens',
    },
    spare: {
      name: 'spare',
      tex: 'L_r - L',
      unit: 'm',
      digits: { decimals: 2 },
      means: 'room length left over; negative when short',
    },
    clear: {
      name: 'clear of walls',
      kind: 'yes-no',
      means: 'whether the side walls stay out of the picture at the backdrop',
    },
    light: {
      name: 'light fits',
      kind: 'yes-no',
      means: 'whether a light fits beside the frame on both sides, and above it',
    },
  },
  symbols: [
    { tex: 'm', means: 'the magnification' },
    {
      tex: 'h',
      means: 'the height of the frame on the sensor, as held and as cropped for the print',
    },
  ],
  compute({
    format: size,
    orientation: held,
    aspect,
    H,
    f,
    b,
    a,
    c,
    roomLength,
    roomWidth: wide,
    ceiling,
    k,
  }) {
    const { across, up } = framed({ format: size, orientation: held, aspect });
    const m = (up / H) as Ratio;
    const W = across / m;
    const others = a === undefined || b === undefined || c === undefined ? undefined : a + b + c;
    const needed =
      f === undefined || others === undefined
        ? undefined
        : ((others + sensorToSubject({ f, m })) as Length);
    const along = f === undefined ? undefined : subjectDistance({ f, m });
    return {
      // A room too short for any lens leaves a longest focal length of nothing.
      longest:
        roomLength === undefined || others === undefined
          ? undefined
          : (Math.max(0, (roomLength - others) / (2 + m + 1 / m)) as Length),
      needed,
      spare:
        roomLength === undefined || needed === undefined
          ? undefined
          : ((roomLength - needed) as Length),
      clear:
        along === undefined || b === undefined || wide === undefined
          ? undefined
          : within((W * (along + b)) / along, wide),
      light:
        wide === undefined || ceiling === undefined || k === undefined
          ? undefined
          : within(W + 2 * k, wide) && within(H + k, ceiling),
    };
  },
  slips: {
    'from-the-lens': {
      compute: ({ format: size, orientation: held, aspect, H, f, a, b, c }) =>
        f === undefined || a === undefined || b === undefined || c === undefined
          ? {}
          : {
              needed: (a +
                b +
                c +
                f * (1 + H / framed({ format: size, orientation: held, aspect }).up)) as Length,
            },
      say: 'That counts from the lens. The camera behind it takes room too: count from the sensor, f(2 + m + 1/m).',
    },
  },
  worked: {
    tex: String.raw`\begin{aligned} L ={} & \val{a} + \val{b} + \val{f} \times \left( 2 + \val{m} + \frac{1}{\val{m2}} \right) \\ & {} + \val{c} = \val{needed} \end{aligned}`,
    values: ({ format: size, orientation: held, aspect, H, f, a, b, c }, { needed }) => {
      const m = framed({ format: size, orientation: held, aspect }).up / H;
      return {
        a: plain(a, 'm'),
        b: plain(b, 'm'),
        f: plain(f, 'mm'),
        m: plain(m, '1', 3),
        m2: plain(m, '1', 3),
        c: plain(c, 'm'),
        needed: { value: needed, unit: 'm', digits: 3 },
      };
    },
  },
  model:
    'Thin lens in focus on the child; the line of sight runs level down the middle of a rectangular room.',
  breaks:
    'Radiators, doors and low beams are not in it; a light behind the frame’s edge may stand nearer than beside it. Leave the way out free.',
  sources: ['navedtra-14209'],
});
