import { unitFor, writeNumber, type Style } from '../formula/notation/write.ts';
import { factorOf, type Unit } from '../formula/units.ts';
import { mm, type FNumber, type Length, type Ratio } from '../formula/quantities.ts';
import background from '../optics/aperture/background-blur.ts';
import depthOfField from '../optics/aperture/depth-of-field.ts';
import { blurAt, coneOf, sharpDepths } from '../optics/aperture/pupil.ts';
import { framed, type Format, type Orientation } from '../optics/lens/frame.ts';
import { subjectDistance } from '../optics/lens/thin-lens.ts';
import { showResult } from '../formula/show.ts';
import type { Point } from './clip.ts';
import { disc } from './disc.ts';
import { pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';

export interface EqualFraming {
  readonly format: Format;
  readonly orientation: Orientation;
  /** How much fills the frame's height at the child. */
  readonly H: Length;
  readonly N: FNumber;
  /** From the child back to the backdrop; may be infinite. */
  readonly b: Length;
  readonly c: Length;
}

const [SHORT, LONG] = [35, 200];
const NAMED = [35, 50, 85, 135, 200];
const [LEFT, RIGHT, TALL] = [14, 340, 78];

/**
 * Depth and the backdrop's blur over focal length, the child filling the frame alike: the camera steps back as the lens
 * grows longer.
 *
 * Model: thin lens with one entrance pupil, p = 1; s = f(1 + 1/m). Valid: any lengths above 0; an endless depth runs off.
 */
export const drawEqualFraming = (given: EqualFraming, style: Style = {}): Sheet => {
  const { H, N, b, c } = given;
  const on = pen(style);
  const { up } = framed({ ...given, aspect: null });
  const m = (up / H) as Ratio;
  const at = (f: number) => {
    const s = subjectDistance({ f: mm(f), m });
    const cone = coneOf({ f: mm(f), N, s, p: 1 as Ratio });
    const { ahead, behind } = sharpDepths(cone, c);
    return { s, depth: ahead + behind, blur: cone.m * blurAt(cone, b) };
  };
  const x = (f: number): number =>
    LEFT + ((RIGHT - LEFT) * Math.log(f / SHORT)) / Math.log(LONG / SHORT);
  const marks = NAMED.map((f) => ({ f, ...at(f) }));
  const steps = Array.from({ length: 41 }, (_, i) => SHORT * (LONG / SHORT) ** (i / 40));
  const write = {
    depth: (one: number) => showResult(depthOfField.outputs.total, one, style),
    blur: (one: number) => showResult(background.outputs.sensor, one, style),
  };

  const panel = (key: 'depth' | 'blur', unit: Unit, name: string, foot: number): void => {
    const role = key === 'depth' ? 'light' : 'shade';
    // The longest lens sets the height: what a shorter one adds without end runs off.
    const last = Number(marks.at(-1)?.[key]);
    const most = Math.max(...marks.map((one) => one[key]));
    const full =
      Number.isFinite(most) && most < 3 * last ? most : Number.isFinite(last) ? 2 * last : 1;
    const y = (value: number): number => foot - (full > 0 ? (value / full) * (TALL - 8) : 0);
    on.text(LEFT, foot - TALL - 22, `${name}, ${unit}`);
    on.line('object', [
      [LEFT, foot - TALL],
      [LEFT, foot],
      [RIGHT, foot],
    ]);
    const curve = steps.map((f): Point => [x(f), y(at(f)[key])]);
    on.line(
      role,
      curve.filter(([, level]) => level >= foot - TALL),
    );
    for (const one of marks) {
      const level = y(one[key]);
      on.line('dimension', [
        [x(one.f), foot],
        [x(one.f), foot + 5],
      ]);
      const seen = level >= foot - TALL;
      if (seen) disc(on, role, x(one.f), level, 3, true);
      on.text(
        x(one.f) + (one.f === SHORT ? 4 : 0),
        (seen ? level : foot - TALL) - 8,
        writeNumber(one[key] / factorOf(unit), 3, style),
        one.f === SHORT ? 'start' : one.f === LONG ? 'end' : 'middle',
      );
    }
  };
  panel('depth', unitFor('cm', undefined, style), 'depth in all', 112);
  panel('blur', 'mm', 'blur of the backdrop, on the sensor', 234);
  for (const { f } of marks)
    on.text(x(f), 254, writeNumber(f, { significant: 3 }, { ...style, exact: true }), 'middle');
  on.text(356, 272, 'focal length, mm', 'end');
  const [first, final] = [marks[0], marks.at(-1)];
  return {
    width: WIDTH,
    height: 280,
    marks: on.marks,
    says: `Depth and backdrop blur for focal lengths from ${SHORT} to ${LONG} mm, the frame ${on.length(H)} high at the child each time. Depth goes from ${write.depth(first?.depth ?? 0)} to ${write.depth(final?.depth ?? 0)}, the blur of a backdrop ${on.length(b)} behind from ${write.blur(first?.blur ?? 0)} to ${write.blur(final?.blur ?? 0)}.`,
    table: {
      head: ['focal length', 'distance', 'depth', 'blur'],
      rows: marks.map(({ f, s, depth, blur }) => [
        on.mm(mm(f)),
        on.length(s),
        write.depth(depth),
        write.blur(blur),
      ]),
    },
  };
};
