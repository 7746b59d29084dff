/** Up to here the curve is a straight line: a surface of this reflectance or less, in the key's light, is shown as it is. */
export const KNEE = 0.6;

/**
 * The print's brightness for a brightness in the scene, both linear, 1 being white paper in the key's light, square on.
 *
 * Model: a straight line to the knee; over it `knee + (1 − knee)·t/(1 + t)`, t = (x − knee)/(1 − knee), which leaves the
 * line at the same slope and comes up to 1. The exposure is the key's as a meter held at the face reads it, square to
 * the key: a grey card of 18 % there comes out at 18 %.
 */
export const tone = (x: number): number => {
  if (x <= KNEE) return Math.max(0, x);
  const t = (x - KNEE) / (1 - KNEE);
  return KNEE + ((1 - KNEE) * t) / (1 + t);
};

const LEVELS = 4096;
const TOP = 8;
/** Square roots are evenly spaced, so that shadows have as many steps as lights. */
const SCREEN = Uint8ClampedArray.from({ length: LEVELS + 1 }, (_, i) => {
  const x = tone(TOP * (i / LEVELS) ** 2);
  return Math.round(255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055));
});

/** The same as the screen's own number (sRGB, 0 to 255). */
export const onScreen = (x: number): number =>
  SCREEN[Math.round(Math.sqrt(Math.min(TOP, Math.max(0, x)) / TOP) * LEVELS)] ?? 255;
