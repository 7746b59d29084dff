import cie from '../../../shared/tables/cie-1931.json' with { type: 'json' };

/** Chromaticity coordinates of the CIE 1931 2° observer. */
export interface Chromaticity {
  readonly x: number;
  readonly y: number;
}

/** The second radiation constant hc/k in m·K; exact in the SI of 2019, rounded to the ten figures printed. */
const C2 = 1.438776877e-2;

/**
 * Spectral radiance of a black body, up to a factor.
 * Model: Planck's law. Valid: wavelength and temperature above 0.
 */
const radiance = (wavelength: number, temperature: number): number =>
  wavelength ** -5 / Math.expm1(C2 / (wavelength * temperature));

/**
 * The chromaticity of a black body: a point of the Planckian locus.
 *
 * Model: Planck's law summed with the CIE 1931 2° colour-matching functions every 5 nm from 380 to 780 nm.
 * Valid: temperatures from about 500 K up; infinite is the locus's blue end.
 * Source: ISO/CIE 11664-1; CIE 15.
 * @example planckian(2856) // { x: 0.4476, y: 0.4074 }, illuminant A
 */
export const planckian = (temperature: number): Chromaticity => {
  let [X, Y, Z] = [0, 0, 0];
  cie.y.forEach((y, i) => {
    const wavelength = (cie.from + i * cie.step) * 1e-9;
    const power = temperature === Infinity ? wavelength ** -4 : radiance(wavelength, temperature);
    X += (cie.x[i] ?? 0) * power;
    Y += y * power;
    Z += (cie.z[i] ?? 0) * power;
  });
  const sum = X + Y + Z;
  return { x: X / sum, y: Y / sum };
};
