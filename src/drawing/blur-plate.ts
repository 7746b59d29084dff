import type { Given } from '../formula/record.ts';
import type { Style } from '../formula/notation/write.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import formula from '../optics/aperture/background-blur.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { framed } from '../optics/lens/frame.ts';
import { magnification } from '../optics/lens/thin-lens.ts';
import { comparedStops, stop } from './stops.ts';

/** A painted patch of the quay: metres from the middle of the backdrop and above its foot; colour in linear light. */
export interface Patch {
  readonly box: readonly [number, number, number, number];
  readonly colour: readonly [number, number, number];
}

/** A point of light on the backdrop, and how bright it is: 1 fills a disc of a hundredth of the frame to white. */
export interface Lamp {
  readonly x: number;
  readonly y: number;
  readonly level: number;
}

/** The painted quay: evening sky over water, a wall in courses of stone, a house, two masts, bollards. Our own. */
export const quay: readonly Patch[] = [
  { box: [-1.35, 0, 1.35, 2.4], colour: [0.1, 0.14, 0.24] },
  { box: [-1.35, 0.95, 1.35, 1.25], colour: [0.36, 0.24, 0.16] },
  { box: [-1.35, 0.62, 1.35, 0.95], colour: [0.05, 0.1, 0.15] },
  { box: [-1.2, 0.86, -0.62, 1.5], colour: [0.2, 0.07, 0.05] },
  { box: [-1.26, 1.5, -0.56, 1.58], colour: [0.05, 0.04, 0.05] },
  { box: [-1.08, 1.12, -0.96, 1.3], colour: [0.75, 0.5, 0.18] },
  { box: [-0.86, 1.12, -0.74, 1.3], colour: [0.75, 0.5, 0.18] },
  { box: [-0.46, 0.72, -0.06, 0.84], colour: [0.3, 0.3, 0.28] },
  { box: [-0.29, 0.84, -0.27, 1.7], colour: [0.4, 0.3, 0.2] },
  { box: [-1.35, 0, 1.35, 0.62], colour: [0.05, 0.045, 0.04] },
  { box: [0.5, 0.7, 1.1, 0.8], colour: [0.08, 0.16, 0.2] },
  { box: [0.78, 0.8, 0.8, 1.55], colour: [0.3, 0.22, 0.14] },
  ...[0, 1, 2, 3, 4].flatMap((row): Patch[] =>
    Array.from({ length: 10 }, (_, i) => {
      const x = -1.35 + i * 0.3 - (row % 2) * 0.15;
      const tone = 0.12 + 0.05 * ((i * 7 + row * 3) % 4);
      return {
        box: [
          Math.max(-1.35, x + 0.008),
          row * 0.124 + 0.004,
          Math.min(1.35, x + 0.292),
          row * 0.124 + 0.12,
        ],
        colour: [tone, tone * 0.9, tone * 0.75],
      };
    }),
  ),
  { box: [-0.52, 0.6, -0.42, 0.78], colour: [0.02, 0.02, 0.02] },
  { box: [0.36, 0.6, 0.46, 0.78], colour: [0.02, 0.02, 0.02] },
];

/** Lamps along the quay. The first stands alone in the sky, where nothing disturbs its disc. */
export const lamps: readonly Lamp[] = [
  { x: 0.26, y: 1.1, level: 1.6 },
  { x: -0.42, y: 1.02, level: 1.2 },
  { x: 0.04, y: 1.33, level: 0.9 },
  { x: -0.2, y: 0.68, level: 0.5 },
  { x: 0.62, y: 0.9, level: 1 },
  { x: 1.02, y: 1.05, level: 0.8 },
  { x: -0.7, y: 0.7, level: 0.6 },
  { x: 0.2, y: 1.42, level: 0.7 },
];

/** Height of the lens, and of the child's eye, over the floor, and of the eye over the seat. */
export const EYE = { floor: 0.61, seat: 0.41 };

/** One plate: how the frame maps the backdrop, and how wide a point becomes. Shares are of the frame's height. */
export interface BlurPlate {
  readonly name: string;
  readonly chosen: boolean;
  /** The blur disc's diameter. */
  readonly disc: number;
  /** Frame heights a metre at the backdrop, and at the child. */
  readonly perMetre: { readonly backdrop: number; readonly child: number };
  readonly says: string;
}

export interface BlurPlates {
  /** Width over height of the frame as held. */
  readonly shape: number;
  readonly plates: readonly BlurPlate[];
}

/**
 * The frame at three apertures, at its true scale: where the backdrop falls in it and how wide each point is smeared.
 *
 * Model: as background-blur, with the lens level at the child's eye; a backdrop beyond 100 m is placed at 100 m, whose
 * blur is that of infinity to a few parts in a hundred.
 */
export const blurPlates = (given: Given, style: Style = {}): BlurPlates => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { format, orientation, f, b } = from;
  const { across, up } = framed({ format, orientation, aspect: null });
  const s = fromLens(from);
  const m = magnification({ f, s });
  const behind = Math.min(b ?? 0, 100);
  return {
    shape: across / up,
    plates: comparedStops(from).map(({ N, chosen }) => {
      const share = formula.compute({ ...from, N }).share ?? 0;
      const name = stop(N, style);
      return {
        name,
        chosen,
        disc: share,
        perMetre: { backdrop: (m / up) * (s / (s + behind)), child: m / up },
        says: `At ${name} each lamp on the quay is an even disc ${writeQuantity(share, '%', { significant: 2 }, style)} of the frame’s height across; the child in front is sharp.`,
      };
    }),
  };
};
