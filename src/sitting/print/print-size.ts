import { InputError } from '../../formula/errors.ts';
import type { Length } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import {
  boxIn,
  pixels,
  printAspect,
  side,
  type Pixels,
  type Resolution,
  type Shape,
} from './inputs.ts';

interface File {
  readonly W: Pixels;
  readonly H: Pixels;
  readonly aspect: Shape | null;
  readonly w: Length | undefined;
  readonly h: Length | undefined;
}

/**
 * The part of the file that is printed, in pixels: cropped to the shape asked for, then to the print's own.
 * @example cropOf({ W: 6000, H: 4000, aspect: null, w: 0.25, h: 0.2 }) // 5000 × 4000
 */
export const cropOf = ({ W, H, aspect, w, h }: File): [number, number] => {
  const turned = W >= H;
  const first: [number, number] = aspect
    ? boxIn(W, H, turned ? aspect.long / aspect.short : aspect.short / aspect.long)
    : [W, H];
  return w === undefined || h === undefined ? first : boxIn(...first, w / h);
};

export default defineFormula({
  id: 'print-size',
  title: 'Pixels for a print',
  tex: String.raw`R = \frac{W'}{w}`,
  spoken: 'R equals W prime over w',
  inputs: {
    W: {
      ...pixels,
      name: 'pixel width',
      tex: 'W',
      start: 4000,
      means: 'how many pixels the file is wide',
    },
    H: {
      ...pixels,
      name: 'pixel height',
      tex: 'H',
      start: 6000,
      means: 'how many it is high',
    },
    w: {
      ...side,
      name: 'print width',
      tex: 'w',
      start: 40,
      optional: true,
      means: 'how wide the print is',
    },
    h: {
      ...side,
      name: 'print height',
      tex: 'h',
      start: 50,
      optional: true,
      means: 'how high it is',
    },
    aspect: printAspect,
    wanted: {
      name: 'wanted resolution',
      tex: 'R_w',
      unit: 'px/in',
      range: [1, 10000],
      span: [72, 600],
      start: 300,
      series: [150, 200, 240, 300],
      optional: true,
      means: 'what the printer asks for; 300 px/in is common practice, no source',
    },
    hidden: {
      name: 'hidden edge',
      tex: 'e',
      unit: 'mm',
      range: [0, 500],
      span: [0, 30],
      start: 5,
      default: 0,
      means: 'what mat or frame hides along each edge of the print',
    },
  },
  ways: [{ groups: [['print-width', 'print-height']], optional: true }],
  outputs: {
    resolution: {
      name: 'resolution',
      tex: 'R',
      unit: 'px/in',
      digits: { significant: 3 },
      means: 'pixels the print has along an inch',
    },
    largestWidth: {
      name: 'largest width',
      unit: 'cm',
      digits: { significant: 3 },
      means: 'the widest print at the resolution that is wanted',
    },
    largestHeight: {
      name: 'largest height',
      unit: 'cm',
      digits: { significant: 3 },
      means: 'and the highest',
    },
    lost: {
      name: 'pixels lost',
      unit: 'px',
      digits: { significant: 3 },
      means: 'how many pixels of the file are not seen: cropped away or hidden',
    },
  },
  compute({ W, H, aspect, w, h, wanted, hidden }) {
    const [across, up] = cropOf({ W, H, aspect, w, h });
    const per = w === undefined ? undefined : across / w;
    const border = per === undefined ? 0 : 2 * hidden * per;
    if (w !== undefined && h !== undefined && !(2 * hidden < Math.min(w, h)))
      throw new InputError('So wide an edge hides the whole print. Try 5 mm.', 'hidden-edge');
    return {
      resolution: per as Resolution | undefined,
      largestWidth: (wanted === undefined ? undefined : across / wanted) as Length | undefined,
      largestHeight: (wanted === undefined ? undefined : up / wanted) as Length | undefined,
      // Pixels are whole: what rounding leaves is none.
      lost: Math.round(W * H - (across - border) * (up - border)) as Pixels,
    };
  },
  slips: {
    'crop-forgotten': {
      compute: ({ W, H, w, h }) => ({
        resolution: (w === undefined || h === undefined ? undefined : Math.max(W / w, H / h)) as
          Resolution | undefined,
      }),
      say: 'That spreads the whole file over the print. The file is cropped to the print’s shape first, and one side of it is lost.',
    },
  },
  worked: {
    tex: String.raw`R = \frac{\val{crop}}{\val{w}} = \val{resolution}`,
    values: (given, { resolution }) => ({
      crop: { value: cropOf(given)[0], unit: 'px', digits: { decimals: 0 } },
      w: { value: given.w, unit: 'cm', digits: { significant: 3 } },
      resolution: { value: resolution, unit: 'px/in', digits: { significant: 3 } },
    }),
  },
  symbols: [{ tex: "W'", means: 'what is left of the file’s width after cropping to the print' }],
  model: 'Square pixels, cropped about the middle, none made up by enlarging.',
  breaks:
    'A sharp lens, a still child and good focus make more of few pixels than many blurred ones; enlarging software adds pixels but no detail.',
  sources: ['photo-print-sizes-wikipedia'],
});
