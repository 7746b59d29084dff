/** A round, even source seen from the face: which way it is, and half the angle it fills. */
export interface Lamp {
  readonly towards: readonly [number, number, number];
  readonly half: number;
}

/** Azimuth from the camera towards camera-right, elevation up, whole apparent size; radians. */
export const lamp = (azimuth: number, elevation: number, size: number): Lamp => ({
  towards: [
    Math.sin(azimuth) * Math.cos(elevation),
    Math.sin(elevation),
    Math.cos(azimuth) * Math.cos(elevation),
  ],
  half: Math.max(size / 2, 1e-3),
});

const [STEPS, STRIPS] = [256, 24];
const heightOf = (strip: number): number => (2 * (strip + 0.5)) / STRIPS - 1;

/**
 * What a surface receives of a lamp by the cosine of its slant, as a share of what it receives square on.
 *
 * Model: a flat, even disc facing the surface point, summed over its parts (each by its cosine at the surface, at the
 * disc, and its distance). Wholly above the surface's horizon it is the cosine itself; setting, it is what is left.
 */
export const received = (half: number): ((cosine: number) => number) => {
  const t = Math.tan(half);
  const table = new Float32Array(2 * STEPS + 1);
  // Strips of the disc at equal heights over its middle, each with all that lies in it.
  const weights = Array.from({ length: STRIPS }, (_, i) => {
    const v = heightOf(i);
    let weight = 0;
    for (let j = 0; j < 4; j++) {
      const w = Math.sqrt(1 - v * v) * ((j + 0.5) / 4);
      weight += Math.sqrt(1 - v * v) / (1 + t * t * (v * v + w * w)) ** 2;
    }
    return weight;
  });
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  for (let k = 0; k <= 2 * STEPS; k++) {
    const cosine = k / STEPS - 1;
    const sine = t * Math.sqrt(1 - cosine * cosine);
    let sum = 0;
    for (let i = 0; i < STRIPS; i++)
      sum += (weights[i] as number) * Math.max(0, cosine + heightOf(i) * sine);
    table[k] = sum / whole;
  }
  return (cosine) => {
    const at = Math.min(2 * STEPS - 1e-3, Math.max(0, (cosine + 1) * STEPS));
    const low = Math.floor(at);
    const a = table[low] as number;
    return a + ((table[low + 1] as number) - a) * (at - low);
  };
};
