import type { Length, Ratio, Time } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { format } from '../lens/frame.ts';
import { focalLength, subjectDistance } from '../lens/inputs.ts';
import { magnification } from '../lens/thin-lens.ts';
import { circle, shutter } from './inputs.ts';

/** A flash's t0.1 over its t0.5 where nothing better is known: an exponential tail gives ln 10 / ln 2. */
const TAIL = 3.32;
/** Our convention for a ghost: the ambient within this many stops of the flash … */
const GHOST_STOPS = 4;
/** … and smeared over more than this many circles, by more than a hair. */
const GHOST_CIRCLES = 2;

/** How long the flash burns, counted above a tenth of its peak. */
const flashTimeOf = (t01: Time | undefined, t05: Time | undefined): number | undefined =>
  t01 ?? (t05 === undefined ? undefined : t05 * TAIL);

const scaleOf = (m: Ratio | undefined, f: Length | undefined, s: Length | undefined): number =>
  m ?? (f === undefined || s === undefined ? 0 : magnification({ f, s }));

export default defineFormula({
  id: 'movement-blur',
  title: 'Movement blur',
  tex: String.raw`\mu = u\,m\,t`,
  spoken: 'mu equals u times m times t',
  inputs: {
    u: {
      name: 'speed',
      tex: 'u',
      unit: 'm/s',
      range: [0, 100],
      span: [0, 4],
      start: 1,
      means:
        'how fast the child moves across the line of sight: sway 0.1, a waved hand 1, a jump 2 m/s (from memory)',
    },
    m: {
      name: 'magnification',
      tex: 'm',
      unit: '1',
      range: [0, 100],
      span: [0.005, 0.2],
      start: 0.04,
      optional: true,
      means: 'the image’s size over the child’s',
    },
    f: { ...focalLength, optional: true },
    s: { ...subjectDistance, optional: true },
    t: { ...shutter, optional: true },
    t01: {
      name: 'flash t01',
      label: 'flash t0.1',
      tex: 't_{0.1}',
      unit: 's',
      range: [1e-7, 1],
      span: [1e-4, 0.01],
      start: 1 / 1000,
      optional: true,
      means: 'how long the flash is above a tenth of its peak',
    },
    t05: {
      name: 'flash t05',
      label: 'flash t0.5',
      tex: 't_{0.5}',
      unit: 's',
      range: [1e-7, 1],
      span: [1e-4, 0.01],
      start: 1 / 3000,
      optional: true,
      means:
        'or how long it is above half its peak, which makers print; 3.32 times longer is taken',
    },
    under: {
      name: 'ambient under',
      tex: 'n',
      unit: 'stop',
      range: [-20, 40],
      span: [0, 8],
      start: 5,
      optional: true,
      means: 'how many stops the ambient light is under the flash',
    },
    format: { ...format, optional: true },
    c: { ...circle, optional: true },
  },
  ways: [
    { groups: [['magnification'], ['focal-length', 'subject-distance']] },
    { groups: [['flash-t01'], ['flash-t05']], optional: true },
  ],
  outputs: {
    flash: {
      name: 'flash blur',
      tex: String.raw`\mu_f`,
      unit: 'mm',
      digits: { significant: 2 },
      means: 'how far the image moves on the sensor while the flash burns',
    },
    ambient: {
      name: 'ambient blur',
      tex: String.raw`\mu_a`,
      unit: 'mm',
      digits: { significant: 2 },
      means: 'how far it moves while the shutter is open',
    },
    flashCircles: {
      name: 'flash circles',
      unit: '1',
      digits: { significant: 2 },
      means: 'the first in circles of confusion: under 1 it looks frozen',
    },
    ambientCircles: {
      name: 'ambient circles',
      unit: '1',
      digits: { significant: 2 },
      means: 'the second in circles',
    },
    ghost: {
      name: 'ghost',
      kind: 'yes-no',
      means:
        'whether a smear shows beside the frozen image (our convention: ambient within 4 stops, over 2 circles long)',
    },
    outlasts: {
      name: 'outlasts shutter',
      kind: 'yes-no',
      means: 'whether the flash burns longer than the shutter is open, so that part of it is lost',
    },
  },
  compute({ u, m, f, s, t, t01, t05, under, c }) {
    const image = u * scaleOf(m, f, s);
    const flashTime = flashTimeOf(t01, t05);
    const flash = flashTime === undefined ? undefined : image * flashTime;
    const ambient = t === undefined ? undefined : image * t;
    const circles = (blur: number | undefined): Ratio | undefined =>
      blur === undefined || c === undefined ? undefined : ((blur / c) as Ratio);
    const smear = circles(ambient);
    return {
      flash: flash as Length | undefined,
      ambient: ambient as Length | undefined,
      flashCircles: circles(flash),
      ambientCircles: smear,
      ghost:
        smear === undefined || under === undefined
          ? undefined
          : under <= GHOST_STOPS && smear > GHOST_CIRCLES * (1 + 1e-12),
      outlasts: t === undefined || flashTime === undefined ? undefined : flashTime > t,
    };
  },
  slips: {
    't05-as-t01': {
      compute: ({ u, m, f, s, t01, t05 }) => ({
        flash: (u * scaleOf(m, f, s) * (t05 ?? (t01 ?? 0) / TAIL)) as Length,
      }),
      say: 'That takes t0.5 for the whole flash. A third of the light comes after it: use t0.1, about 3.32 times longer.',
    },
  },
  worked: {
    tex: String.raw`\mu_f = \val{u} \times \val{m} \times \val{t} = \val{flash}`,
    values: ({ u, m, f, s, t01, t05 }, { flash }) => ({
      u: { value: u, unit: 'm/s', digits: { significant: 2 } },
      m: { value: scaleOf(m, f, s), unit: '1', digits: { significant: 3 } },
      t: { value: flashTimeOf(t01, t05), unit: 's', digits: { fraction: true } },
      flash: { value: flash, unit: 'mm', digits: { significant: 2 } },
    }),
  },
  model:
    'Even movement across the line of sight, in the plane in focus; the flash counted while above a tenth of its peak.',
  breaks:
    'Movement towards the lens smears less and defocuses instead; cut-off flash tubes have shorter tails than 3.32 allows for, and two definitions of flash duration are in print.',
  sources: ['flash-duration-iso-2827'],
});
