import { InputError } from '../../formula/errors.ts';
import type { Length } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { side, type Pixels } from './inputs.ts';

const allowance = {
  unit: 'mm',
  range: [0, 500],
  span: [0, 60],
} as const satisfies Partial<QuantityInput>;

interface Wrap {
  readonly w: Length;
  readonly h: Length;
  readonly depth: Length;
  readonly fold: Length;
  readonly edge: 'wrapped' | 'plain' | 'mirrored';
}

/** The file's two sides: the front alone, or with what goes round the edges and under. */
const fileOf = ({ w, h, depth, fold, edge }: Wrap): [number, number] => {
  const more = edge === 'plain' ? 0 : 2 * (depth + fold);
  return [w + more, h + more];
};

export default defineFormula({
  id: 'wrap-allowance',
  title: 'Pictures that go round the edge',
  tex: String.raw`w_f = w + 2\,(e + u)`,
  spoken: 'w f equals w plus two times e plus u',
  inputs: {
    w: {
      ...side,
      name: 'front width',
      tex: 'w',
      start: 40,
      means: 'how wide the front of the finished picture is',
    },
    h: {
      ...side,
      name: 'front height',
      tex: 'h',
      start: 50,
      means: 'how high it is',
    },
    depth: {
      ...allowance,
      name: 'edge depth',
      tex: 'e',
      start: 20,
      means: 'how deep the frame is that the picture is stretched over',
    },
    fold: {
      ...allowance,
      name: 'fold over',
      tex: 'u',
      start: 15,
      default: 0,
      means: 'how much goes under at the back',
    },
    edge: {
      name: 'edge',
      choices: {
        wrapped: 'wrapped',
        plain: 'plain',
        mirrored: 'mirrored',
      } as const satisfies Record<Wrap['edge'], Wrap['edge']>,
      labels: {
        wrapped: 'the picture goes round',
        plain: 'plain edge',
        mirrored: 'mirrored edge',
      },
      start: 'wrapped',
      means: 'what is seen on the edges',
    },
    resolution: {
      name: 'resolution',
      tex: 'R',
      unit: 'px/in',
      range: [1, 10000],
      span: [72, 600],
      start: 200,
      series: [150, 200, 240, 300],
      optional: true,
      means: 'pixels an inch that the printer asks for',
    },
    drift: {
      ...allowance,
      name: 'drift',
      tex: 'x',
      span: [0, 20],
      start: 3,
      default: 0,
      means: 'how far off the middle it may come to sit; 2 to 5 mm is common practice, no source',
    },
  },
  outputs: {
    fileWidth: {
      name: 'file width',
      tex: 'w_f',
      unit: 'cm',
      digits: { significant: 3 },
      means: 'how wide the file must be',
    },
    fileHeight: {
      name: 'file height',
      unit: 'cm',
      digits: { significant: 3 },
      means: 'how high',
    },
    pixelWidth: {
      name: 'file pixel width',
      unit: 'px',
      digits: { decimals: 0 },
      means: 'the same in pixels',
    },
    pixelHeight: {
      name: 'file pixel height',
      unit: 'px',
      digits: { decimals: 0 },
      means: 'and upwards',
    },
    safeWidth: {
      name: 'safe width',
      unit: 'cm',
      digits: { significant: 3 },
      means: 'what surely stays on the front, across: keep face and hands inside',
    },
    safeHeight: {
      name: 'safe height',
      unit: 'cm',
      digits: { significant: 3 },
      means: 'the same upwards',
    },
  },
  compute(given) {
    const { w, h, resolution, drift } = given;
    if (!(2 * drift < Math.min(w, h)))
      throw new InputError('So much drift leaves nothing of the front. Try 3 mm.', 'drift');
    const [across, up] = fileOf(given);
    const inPixels = (length: number): Pixels | undefined =>
      resolution === undefined ? undefined : ((length * resolution) as Pixels);
    return {
      fileWidth: across as Length,
      fileHeight: up as Length,
      pixelWidth: inPixels(across),
      pixelHeight: inPixels(up),
      safeWidth: (w - 2 * drift) as Length,
      safeHeight: (h - 2 * drift) as Length,
    };
  },
  slips: {
    'one-side': {
      compute: ({ w, depth, fold }) => ({ fileWidth: (w + depth + fold) as Length }),
      say: 'That adds one edge. There are two, left and right.',
    },
  },
  worked: {
    tex: String.raw`w_f = \val{w} + 2 \times ( \val{depth} + \val{fold} ) = \val{file}`,
    values: ({ w, depth, fold, edge }, { fileWidth }) => ({
      w: { value: w, unit: 'cm', digits: { significant: 3 } },
      depth: { value: edge === 'plain' ? 0 : depth, unit: 'mm', digits: { significant: 3 } },
      fold: { value: edge === 'plain' ? 0 : fold, unit: 'mm', digits: { significant: 3 } },
      file: { value: fileWidth, unit: 'cm', digits: { significant: 3 } },
    }),
  },
  symbols: [],
  model:
    'A flat front with square edges. A plain edge needs no picture beyond the front; a mirrored one repeats the front’s own border on the edge, so its file is as large but nothing of the frame is lost.',
  breaks:
    'Cloth stretches and shrinks; every maker has an allowance of their own, and theirs decides. Common practice, no source.',
  sources: [],
});
