import adapt from 'colorjs.io/src/adapt.js';
import 'colorjs.io/src/CATs.js';
import inGamut from 'colorjs.io/src/inGamut.js';
import to from 'colorjs.io/src/to.js';
import { toGamutCSS } from 'colorjs.io/src/toGamut.js';
import linear from 'colorjs.io/src/spaces/srgb-linear.js';
import srgb from 'colorjs.io/src/spaces/srgb.js';
import xyz from 'colorjs.io/src/spaces/xyz-d65.js';
import type { Chromaticity } from '../../optics/colour/planck.ts';

type Three = [number, number, number];

/** Tristimulus values of a chromaticity and a luminance. */
const valuesOf = ({ x, y }: Chromaticity, Y = 1): Three => [(x / y) * Y, Y, ((1 - x - y) / y) * Y];

/** A colour as the screen can show it. */
export interface Shown {
  /** Red, green and blue in linear light, 0 to 1. */
  readonly light: Three;
  /** Whether the screen has the colour itself; if not, it is the nearest it has, of the same lightness and hue. */
  readonly within: boolean;
}

/**
 * A light's colour on the screen as a camera balanced to `white` renders it.
 *
 * Model: von Kries adaptation in Bradford's cone responses, from the white the colour was measured in to the source's,
 * then from the camera's white to the screen's (D65); what sRGB lacks is mapped in OKLCH at constant lightness and hue,
 * by the method of CSS Color 4.
 */
export const onScreen = (
  colour: Chromaticity,
  luminance: number,
  {
    white,
    source,
    measured,
  }: Readonly<Record<'white' | 'source', Chromaticity>> & {
    readonly measured?: Chromaticity;
  },
): Shown => {
  let values = valuesOf(colour, luminance);
  if (measured) values = adapt(valuesOf(measured), valuesOf(source), values);
  values = adapt(valuesOf(white), 'D65', values);
  const seen = { space: xyz, coords: values, alpha: 1 };
  const within = inGamut(seen, srgb, { epsilon: 1e-3 });
  const shown = within ? to(seen, linear) : to(toGamutCSS(seen, { space: srgb }), linear);
  const light = shown.coords.map((one) => Math.min(1, Math.max(0, one ?? 0))) as Three;
  return { light, within };
};
