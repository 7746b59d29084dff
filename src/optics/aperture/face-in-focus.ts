import { InputError } from '../../formula/errors.ts';
import type { FNumber, Length } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { format } from '../lens/frame.ts';
import { focalLength, subjectDistance } from '../lens/inputs.ts';
import { fromLens, lensOffset, measuredFrom } from '../lens/measured-from.ts';
import { imageDistance } from '../lens/thin-lens.ts';
import { circle, fNumber, pupil } from './inputs.ts';
import { marked, marks, thirdMarks, type Marks } from './marks.ts';
import { coneOf, sharpDepths, type Cone } from './pupil.ts';

const reach = {
  unit: 'mm',
  range: [0, 5000],
  span: [0, 150],
} as const satisfies Partial<QuantityInput>;

interface Face {
  readonly ahead: Length;
  readonly behind: Length;
  readonly turn: number;
  readonly sway: Length;
  readonly knees: Length | undefined;
  readonly toes: Length | undefined;
}

/** How much has to be sharp ahead of the focused eye and behind it: a turned head shows less depth, sway adds both ways. */
const wanted = ({
  ahead,
  behind,
  turn,
  sway,
  knees,
  toes,
}: Face): { readonly a: number; readonly b: number } => {
  const cos = Math.cos(turn);
  const a = Math.max(ahead * cos, knees ?? 0, toes ?? 0) + sway;
  const b = behind * cos + sway;
  if (!(a > 0 || b > 0))
    throw new InputError(
      'A face with no depth is sharp at any aperture. Give a reach ahead or behind, such as 25 mm.',
      'reach-ahead',
    );
  return { a, b };
};

/** The smallest f-number at which a point `x` from the focused plane (positive: behind) has a blur no wider than c. */
const stopFor = ({ m, reach: r }: Cone, f: Length, c: Length, x: number): number =>
  (((f * m) / c) * Math.abs(x)) / (r + x);

const widestMark = (N: number, mode: Marks): FNumber =>
  // No engraved mark is small enough: said as infinity, which a page puts into words.
  thirdMarks.find(({ mark, exact }) => (mode === 'exact' ? exact : mark) >= N * (1 - 1e-12))
    ?.mark ?? (Infinity as FNumber);

export default defineFormula({
  id: 'face-in-focus',
  title: 'Face in focus',
  tex: String.raw`N \ge \frac{f m}{c}\,\max \left( \frac{a}{s - e - a}\,,\; \frac{b}{s - e + b} \right)`,
  spoken:
    'N is at least f m over c times the larger of a over s minus e minus a, and b over s minus e plus b',
  inputs: {
    format: { ...format, optional: true },
    f: focalLength,
    N: fNumber,
    s: subjectDistance,
    ahead: {
      ...reach,
      name: 'reach ahead',
      tex: 'a',
      start: start('reach-ahead'),
      means: 'from the focused eye forward to the nose',
    },
    behind: {
      ...reach,
      name: 'reach behind',
      tex: 'b',
      start: start('reach-behind'),
      means: 'from the focused eye back to the ear',
    },
    turn: {
      name: 'head turn',
      tex: String.raw`\varphi`,
      unit: 'deg',
      range: [-80, 80],
      span: [-60, 60],
      start: 0,
      default: 0,
      means: 'how far the face is turned from the camera',
    },
    sway: {
      ...reach,
      name: 'sway',
      tex: 'w',
      span: [0, 80],
      start: 0,
      default: 0,
      means: 'how far the child may lean towards or away from the lens after the focus is set',
    },
    knees: {
      ...reach,
      name: 'knees ahead',
      tex: 'k',
      span: [0, 400],
      start: start('knees-ahead'),
      optional: true,
      empty: true,
      means: 'from the focused eye forward to the knees, if they are to be sharp',
    },
    toes: {
      ...reach,
      name: 'toes ahead',
      tex: String.raw`\ell`,
      span: [0, 500],
      start: start('toes-ahead'),
      optional: true,
      empty: true,
      means: 'from the focused eye forward to the toes, if they are to be sharp',
    },
    c: circle,
    p: pupil,
    marks,
    from: measuredFrom,
    o: lensOffset,
  },
  outputs: {
    covered: { name: 'covered', kind: 'yes-no', means: 'whether all of it is sharp' },
    spare: {
      name: 'spare',
      unit: 'mm',
      digits: { significant: 2 },
      means: 'the depth left over on the tighter side; negative when short',
    },
    side: {
      name: 'binding side',
      kind: 'choice',
      labels: { ahead: 'ahead of the eye', behind: 'behind the eye' },
      means: 'the side that is tighter',
    },
    widest: {
      name: 'widest f-number',
      tex: 'N_{\\min}',
      unit: 'f/',
      digits: { significant: 3 },
      means: 'the widest aperture that covers it, exactly',
    },
    mark: {
      name: 'widest marked',
      unit: 'f/',
      digits: { significant: 2 },
      means: 'the widest third-stop mark that does',
    },
    least: {
      name: 'least distance',
      unit: 'm',
      digits: 3,
      means: 'how near the camera may come at this aperture',
    },
  },
  symbols: [
    { tex: 'e', means: 'from the front principal plane to the entrance pupil; 0 for p = 1' },
    { tex: 'm', means: 'the magnification, f/(s − f)' },
  ],
  compute({ f, N, s, ahead, behind, turn, sway, knees, toes, c, p, marks: mode, from, o }) {
    const stop = marked(N, mode);
    const near = fromLens({ f, s, from, o });
    const cone = coneOf({ f, N: stop, s: near, p });
    const { a, b } = wanted({ ahead, behind, turn, sway, knees, toes });
    if (!(a < cone.reach))
      throw new InputError(
        'What is to be sharp reaches into the lens. Try a longer distance or a shorter reach ahead.',
        'subject-distance',
      );
    const depth = sharpDepths(cone, c);
    const [front, back] = [depth.ahead - a, depth.behind - b];
    const spare = Math.min(front, back);
    const widest = Math.max(stopFor(cone, f, c, -a), stopFor(cone, f, c, b));
    // Each side asks (x − f)(x − k) ≥ q of the distance x from the lens; the larger root is the least distance.
    const least = Math.max(
      ...(
        [
          [a, cone.e + a],
          [b, cone.e - b],
        ] as const
      ).map(
        ([depthWanted, k]) =>
          (f + k + Math.sqrt((f - k) ** 2 + (4 * f * f * depthWanted) / (stop * c))) / 2,
      ),
    );
    // Counted from the sensor, the lens moves as it focuses nearer; nearer than life size no lens of ours goes.
    const nearest = Math.max(least, 2 * f) as Length;
    const counted =
      from === 'sensor'
        ? nearest + o + imageDistance({ f, s: nearest }) - imageDistance({ f, s: near })
        : least;
    return {
      covered: spare >= -1e-12,
      spare: spare as Length,
      side: front < back ? 'ahead' : 'behind',
      widest: widest as FNumber,
      mark: widestMark(widest, mode),
      least: counted as Length,
    };
  },
  worked: {
    tex: String.raw`N \ge \frac{\val{f} \times \val{m}}{\val{c}} \times \frac{\val{x}}{\val{away}} = \val{widest}`,
    values: (
      { f, N, s, ahead, behind, turn, sway, knees, toes, c, p, marks: mode, from, o },
      { widest },
    ) => {
      const cone = coneOf({ f, N: marked(N, mode), s: fromLens({ f, s, from, o }), p });
      const { a, b } = wanted({ ahead, behind, turn, sway, knees, toes });
      const forward = stopFor(cone, f, c, -a) > stopFor(cone, f, c, b);
      const x = forward ? a : b;
      return {
        f: { value: f, unit: 'mm', digits: { significant: 4 } },
        m: { value: cone.m, unit: '1', digits: { significant: 3 } },
        c: { value: c, unit: 'mm', digits: { significant: 3 } },
        x: { value: x, unit: 'mm', digits: { significant: 3 } },
        away: { value: cone.reach + (forward ? -x : x), unit: 'mm', digits: { significant: 4 } },
        widest: { value: widest, unit: 'f/', digits: { significant: 3 } },
      };
    },
  },
  model:
    'Depth of field as in its own formula, focused on the nearer eye; a head turned by φ shows cos φ of its depth.',
  breaks:
    'A turned head also carries the farther eye back, by the distance between the eyes times sin φ: some 15 mm at 20° (from memory). Focus on the nearer eye.',
  sources: [],
});
