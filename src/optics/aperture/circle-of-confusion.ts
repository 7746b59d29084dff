import type { Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { diagonal, format, type Format } from '../lens/frame.ts';

/** How many times larger than the format's height the print is. */
const enlargementOf = (
  size: Format,
  printHeight: Length | undefined,
  enlargement: Ratio | undefined,
): number => enlargement ?? (printHeight ?? 0) / size.height;

export default defineFormula({
  id: 'circle-of-confusion',
  title: 'Circle of confusion',
  tex: String.raw`c = \frac{2\,v\,\tan(\alpha/2)}{E}\,,\qquad E = \frac{H_p}{h}`,
  spoken:
    'c equals two v times the tangent of half alpha, over capital E, where E equals H p over h',
  inputs: {
    format,
    printHeight: {
      name: 'print height',
      tex: 'H_p',
      unit: 'cm',
      range: [0.1, 10000],
      span: [10, 100],
      start: 20,
      optional: true,
      means: 'the print’s shorter side, from the format’s shorter side',
    },
    enlargement: {
      name: 'enlargement',
      tex: 'E',
      unit: '1',
      range: [0.01, 10000],
      span: [2, 50],
      start: 8,
      optional: true,
      means: 'how many times larger than the sensor the print is',
    },
    v: {
      name: 'viewing distance',
      tex: 'v',
      unit: 'cm',
      range: [0.1, 100000],
      span: [20, 200],
      start: 25,
      means: 'from the eye to the print',
    },
    acuity: {
      name: 'acuity',
      tex: String.raw`\alpha`,
      unit: 'arcmin',
      range: [0.01, 600],
      span: [0.5, 4],
      start: 3,
      means:
        'the angle the eye is asked to tell apart; sharp eyes manage 1 arcminute, the usual print standard asks about 3',
    },
  },
  ways: [{ groups: [['print-height'], ['enlargement']] }],
  outputs: {
    c: {
      name: 'circle',
      tex: 'c',
      unit: 'mm',
      digits: { significant: 3 },
      means: 'the largest blur disc on the sensor that still looks sharp in that print',
    },
    divisor: {
      name: 'diagonal divisor',
      tex: 'd/c',
      unit: '1',
      digits: { significant: 3 },
      means: 'the format’s diagonal over the circle: 1500 is the convention used here',
    },
  },
  symbols: [{ tex: 'h', means: 'the format’s shorter side' }],
  compute({ format: size, printHeight, enlargement, v, acuity }) {
    const c = (2 * v * Math.tan(acuity / 2)) / enlargementOf(size, printHeight, enlargement);
    return { c: c as Length, divisor: (diagonal(size.width, size.height) / c) as Ratio };
  },
  slips: {
    'print-blur': {
      compute: ({ v, acuity }) => ({ c: (2 * v * Math.tan(acuity / 2)) as Length }),
      say: 'That is the blur allowed on the print. On the sensor it is smaller by the enlargement.',
    },
  },
  worked: {
    tex: String.raw`c = \frac{2 \times \val{v} \times \tan(\val{acuity} / 2)}{\val{E}} = \val{c}`,
    values: ({ format: size, printHeight, enlargement, v, acuity }, { c }) => ({
      v: { value: v, unit: 'cm', digits: { significant: 3 } },
      acuity: { value: acuity, unit: 'arcmin', digits: { significant: 3 } },
      E: {
        value: enlargementOf(size, printHeight, enlargement),
        unit: '1',
        digits: { significant: 3 },
      },
      c: { value: c, unit: 'mm', digits: { significant: 3 } },
    }),
  },
  model:
    'A blur disc no wider than the smallest angle the eye tells apart, taken back from the print to the sensor.',
  breaks:
    'A convention, not a law of nature: a closer look, a larger print, sharper eyes or a crop all ask for a smaller circle.',
  sources: ['circle-of-confusion-wikipedia'],
});
