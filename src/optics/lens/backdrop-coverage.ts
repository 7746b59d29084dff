import { InputError } from '../../formula/errors.ts';
import type { Angle, Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula, type Given } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { format, framed, orientation, printAspect, type Frame } from './frame.ts';
import { backdropDistance, childOffset, focalLength, subjectDistance } from './inputs.ts';
import { fromLens, lensOffset, measuredFrom } from './measured-from.ts';
import { imageDistance } from './thin-lens.ts';
import { plain } from './worked.ts';

const height = { unit: 'm', range: [-10, 100], span: [0, 2.4] } as const;

/** The four numbers that fix what a tilted camera sees of an upright backdrop. */
interface View {
  readonly frame: Frame;
  /** Image distance, as focused on the aim point. */
  readonly v: Length;
  /** Positive upwards. */
  readonly tilt: Angle;
  /** Horizontal distance from the lens to the backdrop. */
  readonly far: Length;
}

/**
 * Where the top or bottom edge of the frame falls on the upright backdrop, above the lens, and how wide the frame is there.
 *
 * Model: central projection; the edge ray leaves the lens at v forward and half the frame up or down, turned by the tilt.
 * Throws: InputError where the tilt is so steep that the ray never reaches the backdrop.
 */
const edge = (
  { frame, v, tilt, far }: View,
  side: 1 | -1,
): { readonly rise: number; readonly width: number } => {
  const half = (side * frame.up) / 2;
  const forward = v * Math.cos(tilt) - half * Math.sin(tilt);
  const upward = v * Math.sin(tilt) + half * Math.cos(tilt);
  if (!(forward > 0))
    throw new InputError(
      'The camera tilts so far that an edge of the frame never meets the backdrop. Bring the aim nearer to the camera’s height, or step back.',
      'aim-height',
    );
  return { rise: (far * upward) / forward, width: (frame.across * far) / forward };
};

/** The share of the frame's height below the backdrop's foot, which lies `drop` under the lens: 0 when no floor shows. */
const floorShare = ({ frame, v, tilt, far }: View, drop: number): Ratio => {
  const depth = far * Math.cos(tilt) - drop * Math.sin(tilt);
  const up = -1 * far * Math.sin(tilt) - drop * Math.cos(tilt);
  // A camera craned up so far that the foot lies behind its own plane shows no floor.
  if (depth <= 0) return 0 as Ratio;
  return Math.min(1, Math.max(0, (v * up) / depth / frame.up + 0.5)) as Ratio;
};

export default defineFormula({
  id: 'backdrop-coverage',
  title: 'Backdrop in view',
  tex: String.raw`W_b = w\,\frac{s + b}{v \cos\tau \mp \frac{h}{2} \sin\tau}\,,\qquad v = f (1 + m)`,
  spoken:
    'W b equals w times s plus b, over v cosine tau minus or plus half h sine tau, where v equals f times one plus m',
  inputs: {
    format,
    orientation,
    aspect: printAspect,
    f: focalLength,
    s: subjectDistance,
    b: backdropDistance,
    c: {
      ...height,
      name: 'camera height',
      tex: 'c',
      start: start('camera-height'),
      optional: true,
      means: 'the height of the lens above the floor',
    },
    aim: {
      ...height,
      name: 'aim height',
      tex: 'a',
      start: start('aim-height'),
      default: ({ c }: Given) => c as number,
      optional: true,
      means:
        'the height above the floor, at the child, that the middle of the frame meets; the camera’s own unless given',
    },
    platform: {
      ...height,
      name: 'platform height',
      tex: 'p',
      range: [0, 5],
      span: [0, 0.6],
      start: start('platform-height'),
      default: 0,
      means:
        'what the child sits on; it is drawn, and the view of the backdrop does not depend on it',
    },
    e: childOffset,
    width: {
      name: 'backdrop width',
      tex: 'B',
      unit: 'm',
      range: [0.1, 100],
      span: [1, 6],
      start: start('backdrop-width'),
      optional: true,
      means: 'the width of the backdrop, hung centred behind the child',
    },
    height: {
      name: 'backdrop height',
      tex: 'T',
      unit: 'm',
      range: [0.1, 100],
      span: [1, 4],
      start: start('backdrop-height'),
      optional: true,
      means: 'the height of the backdrop, its foot on the floor',
    },
    margin: {
      name: 'margin',
      tex: 'g',
      unit: 'm',
      range: [0, 10],
      span: [0, 0.5],
      start: start('margin'),
      default: 0,
      means:
        'backdrop kept free on each side and above, for a child who shifts and a horizon to straighten',
    },
    from: measuredFrom,
    o: lensOffset,
  },
  outputs: {
    viewWidth: {
      name: 'view width',
      tex: 'W_b',
      unit: 'm',
      digits: 3,
      means: 'the width of backdrop in view, the larger of top and bottom',
    },
    viewWidthTop: {
      name: 'view width top',
      tex: String.raw`W_{\text{top}}`,
      unit: 'm',
      digits: 3,
      means: 'at the frame’s upper edge',
    },
    viewWidthBottom: {
      name: 'view width bottom',
      tex: String.raw`W_{\text{bottom}}`,
      unit: 'm',
      digits: 3,
      means: 'at its lower edge',
    },
    viewHeight: {
      name: 'view height',
      tex: 'H_b',
      unit: 'm',
      digits: 3,
      means: 'the height of backdrop in view',
    },
    lowerEdge: {
      name: 'lower edge',
      tex: 'y_1',
      unit: 'm',
      digits: { decimals: 2 },
      means: 'the frame’s lower edge on the backdrop, above the floor; negative when floor shows',
    },
    upperEdge: {
      name: 'upper edge',
      tex: 'y_2',
      unit: 'm',
      digits: { decimals: 2 },
      means: 'the frame’s upper edge on the backdrop, above the floor',
    },
    neededWidth: {
      name: 'needed width',
      tex: 'W_b + 2g',
      unit: 'm',
      digits: 3,
      means: 'the view with a margin on each side',
    },
    neededHeight: {
      name: 'needed height',
      tex: 'y_2 + g',
      unit: 'm',
      digits: 3,
      means: 'the upper edge with a margin above',
    },
    spareSide: {
      name: 'spare side',
      unit: 'm',
      digits: { decimals: 2 },
      means: 'backdrop left over at the tighter side; negative when short',
    },
    spareTop: {
      name: 'spare top',
      unit: 'm',
      digits: { decimals: 2 },
      means: 'backdrop left over above; negative when short',
    },
    floorDistance: {
      name: 'floor distance',
      unit: 'm',
      digits: 3,
      means: 'from the camera to where the frame’s lower edge meets the floor',
    },
    floorLine: {
      name: 'floor line',
      unit: '%',
      digits: { decimals: 1 },
      means:
        'the height of the backdrop’s foot in the frame, as a share of the frame; 0 when no floor shows',
    },
    tilt: {
      name: 'tilt',
      tex: String.raw`\tau`,
      unit: 'deg',
      digits: { decimals: 1 },
      means: 'how far the camera looks up; negative looking down',
    },
  },
  symbols: [
    {
      tex: 'w, h',
      means:
        'the width and height of the frame on the sensor, as held and as cropped for the print',
    },
    { tex: 'm', means: 'the magnification, as focused on the aim point' },
  ],
  compute({
    format: size,
    orientation: held,
    aspect,
    f,
    s,
    b,
    c,
    aim,
    e,
    width,
    height: tall,
    margin,
    from,
    o,
  }) {
    if (aim !== undefined && c === undefined)
      throw new InputError(
        'An aim height needs the camera height too: the tilt lies between them. Give camera-height.',
        'camera-height',
      );
    const near = fromLens({ f, s, from, o });
    if (!Number.isFinite(near))
      throw new InputError(
        'The subject distance must be finite here: the backdrop stands behind the child. Try 2.2 m.',
        'subject-distance',
      );
    const rise = c === undefined || aim === undefined ? 0 : aim - c;
    const view: View = {
      frame: framed({ format: size, orientation: held, aspect }),
      v: imageDistance({ f, s: Math.hypot(near, rise) as Length }),
      tilt: Math.atan2(rise, near) as Angle,
      far: (near + b) as Length,
    };
    const [top, bottom] = [edge(view, 1), edge(view, -1)];
    const viewWidth = Math.max(top.width, bottom.width);
    const neededWidth = viewWidth + 2 * margin;
    const upperEdge = c === undefined ? undefined : c + top.rise;
    const lowerEdge = c === undefined ? undefined : c + bottom.rise;
    const neededHeight = upperEdge === undefined ? undefined : upperEdge + margin;
    return {
      viewWidth: viewWidth as Length,
      viewWidthTop: top.width as Length,
      viewWidthBottom: bottom.width as Length,
      viewHeight: (top.rise - bottom.rise) as Length,
      lowerEdge: lowerEdge as Length | undefined,
      upperEdge: upperEdge as Length | undefined,
      neededWidth: neededWidth as Length,
      neededHeight: neededHeight as Length | undefined,
      spareSide:
        width === undefined ? undefined : (((width - neededWidth) / 2 - Math.abs(e)) as Length),
      spareTop:
        tall === undefined || neededHeight === undefined
          ? undefined
          : ((tall - neededHeight) as Length),
      // The ray falls by -bottom.rise on its way to the backdrop, and by the lens's height on its way to the floor.
      floorDistance:
        c === undefined
          ? undefined
          : ((bottom.rise < 0 ? (view.far * c) / -bottom.rise : Infinity) as Length),
      floorLine: c === undefined ? undefined : floorShare(view, c),
      tilt: view.tilt,
    };
  },
  slips: {
    'child-plane': {
      compute: ({ format: size, orientation: held, aspect, f, s }) => ({
        viewWidth: ((framed({ format: size, orientation: held, aspect }).across * (s - f)) /
          f) as Length,
      }),
      say: 'That is the width at the child. The frame goes on widening to the backdrop: multiply by (s + b)/s.',
    },
    refocused: {
      compute: ({ format: size, orientation: held, aspect, f, s, b }) => ({
        viewWidth: ((framed({ format: size, orientation: held, aspect }).across * (s + b - f)) /
          f) as Length,
      }),
      say: 'That refocuses the lens on the backdrop. The lens stays focused on the child, and its angle with it.',
    },
  },
  worked: {
    tex: String.raw`W_b = \val{w} \times \frac{\val{s} + \val{b}}{\val{forward}} = \val{viewWidth}`,
    values: ({ format: size, orientation: held, aspect, f, s, b, from, o }, { viewWidth }) => {
      const { across } = framed({ format: size, orientation: held, aspect });
      const near = fromLens({ f, s, from, o });
      return {
        w: plain(across, 'mm'),
        s: plain(near, 'm'),
        b: plain(b, 'm'),
        forward: plain((across * (near + b)) / (viewWidth ?? 1), 'mm'),
        viewWidth: { value: viewWidth, unit: 'm', digits: 3 },
      };
    },
  },
  model:
    'Thin lens focused on the aim point at the child; distances horizontal, from the front principal plane; the camera tilts about the lens; the backdrop hangs upright, centred behind the child, its foot on the floor. Edges are taken where the frame’s edge rays meet the backdrop’s plane, under the floor too.',
  breaks:
    'A backdrop that sags or sweeps forward on to the floor, a lens with strong distortion, and a horizon that is not level all need more than this: leave a margin.',
  sources: [],
});
