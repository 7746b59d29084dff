import type { FNumber, Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { fNumber } from '../aperture/inputs.ts';
import { marked, marks } from '../aperture/marks.ts';
import { diagonal, format, framed, printAspect } from './frame.ts';
import { focalLength } from './inputs.ts';
import { plain } from './worked.ts';

export default defineFormula({
  id: 'equivalence',
  title: 'Equivalents between formats',
  tex: String.raw`k = \frac{d'}{d}\,,\qquad f' = k f\,,\qquad N' = k N`,
  spoken: 'k equals d prime over d; f prime equals k times f; N prime equals k times N',
  inputs: {
    format,
    f: { ...focalLength, optional: true },
    N: { ...fNumber, optional: true },
    to: {
      ...format,
      name: 'to format',
      start: '23.6x15.8',
      default: '36x24',
      means: 'the format to translate into',
    },
    aspect: printAspect,
    marks,
  },
  outputs: {
    factor: {
      name: 'crop factor',
      tex: 'k',
      unit: '1',
      digits: 3,
      means: 'the ratio of the diagonals, of what the print shows',
    },
    fEquivalent: {
      name: 'equivalent focal length',
      tex: "f'",
      unit: 'mm',
      digits: 3,
      means: 'gives the same diagonal angle of view on the other format',
    },
    fByWidth: {
      name: 'equivalent focal length by width',
      tex: "f'_w",
      unit: 'mm',
      digits: 3,
      means: 'gives the same horizontal angle instead; it differs where the shapes do',
    },
    NEquivalent: {
      name: 'equivalent f-number',
      tex: "N'",
      unit: 'f/',
      digits: { significant: 2 },
      means:
        'gives the same blur and depth from the same place in the same print; never the same exposure',
    },
  },
  symbols: [
    { tex: "d, d'", means: 'the diagonals of the two formats, after the crop for the print' },
  ],
  compute({ format: from, f, N, to, aspect, marks: mode }) {
    const a = framed({ format: from, orientation: 'landscape', aspect });
    const b = framed({ format: to, orientation: 'landscape', aspect });
    const k = diagonal(b.across, b.up) / diagonal(a.across, a.up);
    return {
      factor: k as Ratio,
      fEquivalent: f === undefined ? undefined : ((f * k) as Length),
      fByWidth: f === undefined ? undefined : (((f * b.across) / a.across) as Length),
      NEquivalent: N === undefined ? undefined : ((marked(N, mode) * k) as FNumber),
    };
  },
  slips: {
    upside: {
      compute: ({ format: from, f, to, aspect }) => {
        const a = framed({ format: from, orientation: 'landscape', aspect });
        const b = framed({ format: to, orientation: 'landscape', aspect });
        return f === undefined
          ? {}
          : { fEquivalent: ((f * diagonal(a.across, a.up)) / diagonal(b.across, b.up)) as Length };
      },
      say: 'That divides where it should multiply: the smaller format needs the shorter lens.',
    },
  },
  worked: {
    tex: String.raw`f' = \val{f} \times \frac{\val{to}}{\val{from}} = \val{fEquivalent}`,
    values: ({ format: from, f, to, aspect }, { fEquivalent }) => {
      const a = framed({ format: from, orientation: 'landscape', aspect });
      const b = framed({ format: to, orientation: 'landscape', aspect });
      return {
        f: plain(f, 'mm'),
        to: plain(diagonal(b.across, b.up), 'mm'),
        from: plain(diagonal(a.across, a.up), 'mm'),
        fEquivalent: { value: fEquivalent, unit: 'mm', digits: 3 },
      };
    },
  },
  model:
    'Same place, same subject, same print: the diagonal angles agree, and so do blur and depth when N scales alike.',
  breaks:
    'Exposure does not translate: f/4 is f/4 for the meter on every format. Where the formats’ shapes differ, no one lens matches both sides; a print’s crop can settle it.',
  sources: ['lensfun-manual', 'cipa-dcg-001'],
});
