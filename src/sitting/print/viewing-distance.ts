import type { Length } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { pixels, side, type Pixels, type Resolution } from './inputs.ts';

export default defineFormula({
  id: 'viewing-distance',
  title: 'What the eye can use',
  tex: String.raw`R = \frac{1}{D\,\tan\,\alpha}`,
  spoken: 'R equals one over D times the tangent of alpha',
  inputs: {
    D: {
      name: 'viewing distance',
      tex: 'D',
      unit: 'cm',
      range: [1, 100000],
      span: [20, 500],
      start: 65,
      means: 'from the eye to the print; the print’s diagonal is common practice',
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
    W: {
      ...pixels,
      name: 'pixel width',
      tex: 'W',
      start: 4000,
      optional: true,
      means: 'how many pixels the cropped file is wide',
    },
    H: {
      ...pixels,
      name: 'pixel height',
      tex: 'H',
      start: 5000,
      optional: true,
      means: 'how many it is high',
    },
    acuity: {
      name: 'acuity',
      tex: String.raw`\alpha`,
      unit: 'arcmin',
      range: [0.1, 60],
      span: [0.4, 4],
      start: 1,
      default: 1,
      means: 'the smallest angle the eye tells apart: 1′ for good eyes in good light',
    },
  },
  outputs: {
    resolution: {
      name: 'resolution',
      tex: 'R',
      unit: 'px/in',
      digits: { significant: 3 },
      means: 'pixels an inch of which the eye can just see one',
    },
    leastWidth: {
      name: 'least width',
      unit: 'px',
      digits: { decimals: 0 },
      means: 'the pixels across that such a print needs',
    },
    leastHeight: {
      name: 'least height',
      unit: 'px',
      digits: { decimals: 0 },
      means: 'the pixels up',
    },
    suffices: {
      name: 'suffices',
      kind: 'yes-no',
      means: 'whether the file has at least as many',
    },
  },
  compute({ D, w, h, W, H, acuity }) {
    const resolution = 1 / (D * Math.tan(acuity));
    const need = (side: Length | undefined): number | undefined =>
      side === undefined ? undefined : side * resolution;
    const [across, up] = [need(w), need(h)];
    return {
      resolution: resolution as Resolution,
      leastWidth: across as Pixels | undefined,
      leastHeight: up as Pixels | undefined,
      suffices:
        across === undefined || up === undefined || W === undefined || H === undefined
          ? undefined
          : W >= across * (1 - 1e-12) && H >= up * (1 - 1e-12),
    };
  },
  slips: {
    'pairs-of-lines': {
      compute: ({ D, acuity }) => ({ resolution: (2 / (D * Math.tan(acuity))) as Resolution }),
      say: 'That counts two pixels for each angle: a dark and a light line. The common rule counts one.',
    },
  },
  worked: {
    tex: String.raw`R = \frac{1}{\val{D} \times \tan\,\val{acuity}} = \val{resolution}`,
    values: ({ D, acuity }, { resolution }) => ({
      D: { value: D, unit: 'cm', digits: { significant: 3 } },
      acuity: { value: acuity, unit: 'arcmin', digits: { significant: 3 } },
      resolution: { value: resolution, unit: 'px/in', digits: { significant: 3 } },
    }),
  },
  symbols: [],
  model: 'One pixel fills the smallest angle the eye resolves.',
  breaks:
    'Fine regular patterns show beyond it, soft skin needs far less, and people walk up to a picture they love.',
  sources: ['photo-se-17835'],
});
