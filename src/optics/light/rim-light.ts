import { InputError } from '../../formula/errors.ts';
import type { Angle, Stops } from '../../formula/quantities.ts';
import { defineFormula, type Given } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { format, framed, orientation } from '../lens/frame.ts';
import { focalLength } from '../lens/inputs.ts';
import { imageDistance } from '../lens/thin-lens.ts';

type Point = readonly [number, number, number];

/** How far the rim light stands from the hair. */
const reachOf = ({ aside, height, behind }: Given): number =>
  Math.hypot(aside as number, height as number, behind as number);

/** The angle at the light between the hair it is aimed at and a point. */
const off = (light: Point, point: Point): number => {
  const axis = light.map((x) => -x);
  const to = point.map((x, i) => x - (light[i] ?? 0));
  const dot = axis.reduce((sum, x, i) => sum + x * (to[i] ?? 0), 0);
  return Math.acos(Math.min(1, Math.max(-1, dot / (Math.hypot(...axis) * Math.hypot(...to)))));
};

const INSIDE = 1 + 1e-12;

export default defineFormula({
  id: 'rim-light',
  title: 'Where a rim light reaches',
  tex: String.raw`\gamma = \arctan\,\frac{z}{x} \qquad \delta \le \frac{\theta}{2}`,
  spoken: 'gamma equals the arctangent of z over x; delta is at most theta over two',
  inputs: {
    behind: {
      name: 'light behind',
      tex: 'z',
      unit: 'm',
      range: [-20, 20],
      span: [-0.5, 4],
      start: 1.4,
      means: 'how far behind the child it stands',
    },
    aside: {
      name: 'light aside',
      tex: 'x',
      unit: 'm',
      range: [-20, 20],
      span: [-3, 3],
      start: -0.9,
      means: 'how far to the side; negative is camera-left',
    },
    height: {
      name: 'light height',
      tex: 'y',
      unit: 'm',
      range: [-5, 20],
      span: [-1, 2.5],
      start: 0.9,
      means: 'how high above the hair it is aimed at',
    },
    angle: {
      name: 'beam angle',
      tex: String.raw`\theta`,
      unit: 'deg',
      range: [0.1, 179],
      span: [5, 120],
      start: 20,
      series: [10, 20, 30, 40, 70],
      means: 'the full angle of its beam: a grid, or a bare standard reflector at about 70°',
    },
    depth: {
      name: 'set depth',
      tex: 'l',
      unit: 'm',
      range: [0, 50],
      span: [0.2, 5],
      start: 1.6,
      means: 'how deep the set is, the child in its middle',
    },
    D: {
      name: 'camera distance',
      tex: 'D',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.5, 6],
      start: start('subject-distance'),
      means: 'from the lens to the child; the camera is level with the hair',
    },
    f: focalLength,
    format,
    orientation,
    power: {
      name: 'light stops',
      tex: 'p',
      unit: 'stop',
      range: [-20, 20],
      span: [-6, 6],
      start: 0,
      means: 'its strength over the key’s, both metered from the same distance',
    },
    key: {
      name: 'key distance',
      tex: 'd_k',
      unit: 'm',
      range: [0.05, 100],
      span: [0.3, 5],
      start: start('key-distance'),
      optional: true,
      means: 'how far the key is from the child; as far as the rim light unless given',
    },
  },
  outputs: {
    over: {
      name: 'over key',
      label: 'over the key',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much stronger the rim light is at the hair, flat disc towards each light',
    },
    back: {
      name: 'hits back',
      label: 'reaches the back edge',
      kind: 'yes-no',
      means: 'whether the beam reaches the back edge of the set',
    },
    mid: {
      name: 'hits mid',
      label: 'reaches the child',
      kind: 'yes-no',
      means: 'whether it reaches the child it is aimed at',
    },
    fore: {
      name: 'hits fore',
      label: 'reaches the front edge',
      kind: 'yes-no',
      means: 'whether it reaches the front edge of the set',
    },
    round: {
      name: 'behind angle',
      label: 'angle behind',
      tex: String.raw`\gamma`,
      unit: 'deg',
      digits: { significant: 3 },
      means: '0 is level with the child, 90° straight behind',
    },
    inFrame: {
      name: 'in frame',
      label: 'in the frame',
      kind: 'yes-no',
      labels: { yes: 'yes: the light stands in the picture', no: 'no' },
      means: 'whether the picture would show the light itself',
    },
    strikes: {
      name: 'strikes lens',
      label: 'strikes the lens',
      kind: 'yes-no',
      labels: { yes: 'yes: flag it', no: 'no' },
      means: 'whether its beam reaches the lens, where it veils the picture',
    },
  },
  compute({
    behind,
    aside,
    height,
    angle,
    depth,
    D,
    f,
    format: size,
    orientation: held,
    power,
    key,
  }) {
    const reach = reachOf({ behind, aside, height });
    if (!(reach > 0))
      throw new InputError(
        'The light stands in the child. Move it behind, aside or up, by 0.5 m or more.',
        'light-behind',
      );
    const light: Point = [aside, height, behind * -1];
    const hits = (point: Point): boolean => off(light, point) <= (angle / 2) * INSIDE;
    const away = D + behind;
    const v = imageDistance({ f, s: D });
    const { across, up } = framed({ format: size, orientation: held, aspect: null });
    const within = (x: number, side: number): boolean =>
      Math.abs(x) <= ((side / 2) * away * INSIDE) / v;
    return {
      over: (power + (key === undefined ? 0 : 2 * Math.log2(key / reach))) as Stops,
      back: hits([0, 0, depth / -2]),
      mid: hits([0, 0, 0]),
      fore: hits([0, 0, depth / 2]),
      round: (behind === 0 && aside === 0
        ? Math.PI / 2
        : Math.atan2(behind, Math.abs(aside))) as Angle,
      inFrame: away > 0 && within(aside, across) && within(height, up),
      strikes: hits([0, 0, D]),
    };
  },
  slips: {
    'distance-forgotten': {
      compute: ({ power }) => ({ over: power }),
      say: 'That compares the lights at the same distance. The nearer one gains two stops for each halving.',
    },
  },
  worked: {
    tex: String.raw`\gamma = \arctan\,\frac{\val{z}}{\val{x}} = \val{round}`,
    values: ({ behind, aside }, { round }) => ({
      z: { value: behind, unit: 'm', digits: { decimals: 2 } },
      x: { value: Math.abs(aside), unit: 'm', digits: { decimals: 2 } },
      round: { value: round, unit: 'deg', digits: { significant: 3 } },
    }),
  },
  symbols: [
    {
      tex: String.raw`\delta`,
      means: 'the angle, seen from the light, between the hair and a point',
    },
  ],
  model:
    'A cone with a sharp edge from one point, aimed at the hair; the set’s edges at the hair’s height; the camera level with it and aimed at it.',
  breaks:
    'A grid’s edge is a slope of a stop or two. Hair that is wet, fair or glossy mirrors: the same reading looks a stop or more brighter (common practice: begin level with the key or a stop under).',
  sources: ['cie-eilv-beam-angle'],
});
