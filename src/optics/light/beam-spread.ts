import type { Angle, Length, Stops } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { plain } from '../lens/worked.ts';

interface Cone {
  readonly angle: Angle;
  readonly D: Length;
  readonly tilt: Angle;
}

interface Spot {
  readonly width: number;
  readonly length: number;
  /** From the aim to the ellipse's centre, away from the light. */
  readonly offset: number;
}

/**
 * Where a cone meets a flat backdrop: an ellipse, longer along the tilt; open where its far side never meets it.
 * @example spotOf({ angle: deg(20), D: m(2), tilt: deg(30) }) // 0.709 × 0.823 m, 0.042 m beyond the aim
 */
export const spotOf = ({ angle, D, tilt }: Cone): Spot => {
  const half = angle / 2;
  const round = Math.abs(tilt);
  const room = Math.cos(round) ** 2 - Math.sin(half) ** 2;
  if (room <= 1e-12) return { width: Infinity, length: Infinity, offset: Infinity };
  const square = D * Math.cos(round);
  const [near, far] = [Math.tan(round - half), Math.tan(round + half)];
  return {
    width: (2 * square * Math.sin(half)) / Math.sqrt(room),
    length: square * (far - near),
    // Square on, rounding alone is left: no offset.
    offset: round < 1e-9 ? 0 : square * ((far + near) / 2 - Math.tan(round)),
  };
};

/** The cone whose ellipse is so wide at this distance and tilt. */
const angleFor = (wanted: Length, { D, tilt }: Omit<Cone, 'angle'>): Angle => {
  const [square, cos] = [D * Math.cos(tilt), Math.cos(tilt)];
  const sin = ((wanted / 2) * cos) / Math.hypot(square, wanted / 2);
  return (2 * Math.asin(sin)) as Angle;
};

export default defineFormula({
  id: 'beam-spread',
  title: 'How wide a grid or reflector throws',
  tex: String.raw`w = 2D\,\tan\,\frac{\theta}{2}`,
  spoken: 'w equals two D times the tangent of theta over two',
  inputs: {
    angle: {
      name: 'angle',
      tex: String.raw`\theta`,
      unit: 'deg',
      range: [0.1, 179],
      span: [5, 110],
      start: 20,
      series: [10, 20, 30, 40, 70],
      means: 'the full angle of the beam, as the maker of grid or reflector prints it',
    },
    definition: {
      name: 'definition',
      choices: { beam: 0.5, field: 0.1 },
      labels: { beam: 'beam angle (to 50 %)', field: 'field angle (to 10 %)' },
      start: 'beam',
      optional: true,
      means: 'to which part of the middle’s intensity that angle reaches',
    },
    D: {
      name: 'distance',
      tex: 'D',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 6],
      start: 2,
      means: 'along the beam’s axis, from the opening to the backdrop',
    },
    tilt: {
      name: 'tilt',
      tex: String.raw`\tau`,
      unit: 'deg',
      range: [-89, 89],
      span: [-75, 75],
      start: 30,
      default: 0,
      means: 'how far the axis is off square to the backdrop',
    },
    opening: {
      name: 'opening',
      tex: 'o',
      unit: 'm',
      range: [0, 10],
      span: [0, 1],
      start: 0.18,
      optional: true,
      means: 'how wide the front of the head is; no pool is smaller',
    },
    wanted: {
      name: 'wanted width',
      tex: 'w_w',
      unit: 'm',
      range: [0.001, 1000],
      span: [0.1, 4],
      start: 1,
      optional: true,
      means: 'how wide a spot you want',
    },
  },
  outputs: {
    width: {
      name: 'width',
      tex: 'w',
      unit: 'm',
      digits: { significant: 3 },
      means: 'the spot across the tilt',
    },
    length: {
      name: 'length',
      tex: 'l',
      unit: 'm',
      digits: { significant: 3 },
      means: 'the spot along the tilt',
    },
    offset: {
      name: 'offset',
      unit: 'mm',
      digits: { significant: 2 },
      means: 'how far the spot’s middle lies beyond the point aimed at',
    },
    edge: {
      name: 'edge stops',
      label: 'edge under middle',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much weaker the beam is at that edge than in its middle, by its definition',
    },
    distance: {
      name: 'distance for spot',
      unit: 'm',
      digits: { significant: 3 },
      means: 'how far away this beam makes the wanted spot',
    },
    forSpot: {
      name: 'angle for spot',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'the beam that makes it from here',
    },
  },
  compute({ angle, definition, D, tilt, opening, wanted }) {
    const spot = spotOf({ angle, D, tilt });
    const least = opening ?? 0;
    return {
      width: Math.max(spot.width, least) as Length,
      length: Math.max(spot.length, least) as Length,
      offset: spot.offset as Length,
      edge: definition === undefined ? undefined : (-Math.log2(definition) as Stops),
      distance:
        wanted === undefined
          ? undefined
          : ((Number.isFinite(spot.width) ? (D * wanted) / spot.width : 0) as Length),
      forSpot: wanted === undefined ? undefined : angleFor(wanted, { D, tilt }),
    };
  },
  slips: {
    'factor-two': {
      compute: ({ angle, D }) => ({ width: (D * Math.tan(angle / 2)) as Length }),
      say: 'That is half the spot: the tangent of half the angle reaches from the middle to one edge.',
    },
    'whole-angle': {
      compute: ({ angle, D }) => ({ width: (2 * D * Math.tan(angle)) as Length }),
      say: 'That takes the whole angle for the half on each side of the axis.',
    },
  },
  worked: {
    tex: String.raw`w_0 = 2 \times \val{D} \times \tan\,\frac{\val{angle}}{2} = \val{square}`,
    values: ({ angle, D }) => ({
      D: plain(D, 'm'),
      angle: { value: angle, unit: 'deg', digits: { significant: 3 } },
      square: {
        value: 2 * D * Math.tan(angle / 2),
        unit: 'm',
        digits: { significant: 3 },
      },
    }),
  },
  symbols: [{ tex: 'w_0', means: 'the spot on a backdrop square to the beam' }],
  model:
    'A cone from one point, met by a flat backdrop; a spot is never taken smaller than the opening. Whether 50 % or 10 % is meant decides by a factor: say which.',
  breaks:
    'Within about five openings the cone is not formed yet; a grid’s edge is a slope, not a line; makers print 50 %, 10 % or a cut-off angle under the same word.',
  sources: ['cie-eilv-beam-angle', 'ies-field-angle'],
});
