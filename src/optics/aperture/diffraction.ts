import type { FNumber, Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format } from '../lens/frame.ts';
import { circle, fNumber, pupil } from './inputs.ts';
import { marked, marks } from './marks.ts';
import { bellows } from './pupil.ts';

/** Diameter of the Airy disc's first dark ring over λN: twice the first zero of J1, over π. */
const RING = 2.44;

export default defineFormula({
  id: 'diffraction',
  title: 'Diffraction',
  tex: String.raw`\delta = 2.44\,\lambda\,N \left( 1 + \frac{m}{p} \right)`,
  spoken: 'delta equals two point four four lambda N times one plus m over p',
  inputs: {
    N: { ...fNumber, optional: true },
    wavelength: {
      name: 'wavelength',
      tex: String.raw`\lambda`,
      unit: 'nm',
      range: [100, 2000],
      span: [400, 700],
      start: 550,
      means: 'the light’s wavelength; 550 nm is the middle of what we see',
    },
    m: {
      name: 'magnification',
      tex: 'm',
      unit: '1',
      range: [0, 100],
      span: [0, 1],
      start: 0.04,
      default: 0,
      means: 'the image’s size over the child’s',
    },
    p: pupil,
    format: { ...format, optional: true },
    c: { ...circle, optional: true },
    pitch: {
      name: 'pixel pitch',
      tex: 'x',
      unit: 'µm',
      range: [0.1, 100],
      span: [1, 10],
      start: 6,
      optional: true,
      means: 'from one pixel to the next',
    },
    marks,
  },
  outputs: {
    airy: {
      name: 'Airy diameter',
      tex: String.raw`\delta`,
      unit: 'µm',
      digits: 3,
      means: 'the width of the disc a perfect lens makes of a point',
    },
    circles: {
      name: 'circles',
      tex: String.raw`\delta/c`,
      unit: '1',
      digits: { significant: 2 },
      means: 'the same in circles of confusion: what the print sees',
    },
    pixels: {
      name: 'pixels',
      tex: String.raw`\delta/x`,
      unit: '1',
      digits: { significant: 2 },
      means: 'the same in pixels: what the screen at full size sees',
    },
    limit: {
      name: 'limit f-number',
      unit: 'f/',
      digits: { significant: 3 },
      means: 'where the disc reaches the circle',
    },
    pixelLimit: {
      name: 'pixel limit f-number',
      unit: 'f/',
      digits: { significant: 3 },
      means: 'where it reaches one pixel',
    },
  },
  compute({ N, wavelength, m, p, c, pitch, marks: mode }) {
    const perStop = RING * wavelength * bellows({ m, p });
    const airy = N === undefined ? undefined : perStop * marked(N, mode);
    const over = (x: Length | undefined): Ratio | undefined =>
      airy === undefined || x === undefined ? undefined : ((airy / x) as Ratio);
    const limit = (x: Length | undefined): FNumber | undefined =>
      x === undefined ? undefined : ((x / perStop) as FNumber);
    return {
      airy: airy as Length | undefined,
      circles: over(c),
      pixels: over(pitch),
      limit: limit(c),
      pixelLimit: limit(pitch),
    };
  },
  slips: {
    radius: {
      compute: ({ N, wavelength, m, p }) =>
        N === undefined
          ? {}
          : { airy: ((RING / 2) * wavelength * N * bellows({ m, p })) as Length },
      say: 'That is the radius of the first dark ring. The disc is as wide as its diameter.',
    },
  },
  worked: {
    tex: String.raw`\delta = 2.44 \times \val{wavelength} \times \val{N} \times \val{bellows} = \val{airy}`,
    values: ({ N, wavelength, m, p, marks: mode }, { airy }) => ({
      wavelength: { value: wavelength, unit: 'nm', digits: { significant: 3 } },
      N: {
        value: N === undefined ? N : marked(N, mode),
        unit: '1',
        digits: { significant: 3 },
      },
      bellows: { value: bellows({ m, p }), unit: '1', digits: { significant: 3 } },
      airy: { value: airy, unit: 'µm', digits: 3 },
    }),
  },
  model:
    'A round aperture and one wavelength; a perfect lens. The working f-number at close focus is N(1 + m/p).',
  breaks:
    'Real lenses blur by aberrations too, most of all wide open; sharpening recovers part of what diffraction takes. It is a slope, not a cliff.',
  sources: ['openstax-college-physics'],
});
