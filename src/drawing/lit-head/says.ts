import type { Given } from '../../formula/record.ts';
import { writeQuantity } from '../../formula/notation/write.ts';
import { showResult, type Style } from '../../formula/show.ts';
import formula from '../../optics/light/light-on-face.ts';
import type { Lights } from './portrait.ts';

/** One of the two heads: how it is lit, what stands under it, and what it shows in words. */
export interface Portrait {
  readonly lights: Omit<Lights, 'size' | 'rimStops'>;
  readonly name: string;
  readonly says: string;
}

/** Both heads of a plate: the key as set, and the same key from the other side of the camera. */
export interface Pair {
  readonly turn: number;
  /** The nose's length in millimetres, as far as a head can have it. */
  readonly nose: number;
  readonly both: readonly Portrait[];
}

const degrees = (radians: number, style: Style): string =>
  writeQuantity(Math.abs(radians), 'deg', { significant: 3 }, { ...style, exact: true });
const hand = (radians: number): string =>
  Math.abs(radians) < 1e-9 ? '' : radians > 0 ? ' to camera-right' : ' to camera-left';

/** A reading of the light, in words. @param stops over the key; negative infinity where there is no light */
export const sayStops = (stops: number, style: Style = {}): string => {
  if (stops === -Infinity) return 'no light at all';
  const tenths = Math.round(Math.abs(stops) * 10) / 10;
  if (tenths === 0) return 'level with the key';
  const text = writeQuantity(tenths, 'stop', { decimals: 1 }, style);
  return `${tenths === 1 ? text.replace('stops', 'stop') : text} ${stops < 0 ? 'under' : 'over'} the key`;
};

export const pairOf = (given: Given, style: Style = {}): Pair => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { azimuth, elevation, turn, fill, nose } = from;
  const head = `the head turned ${degrees(turn, style)}${hand(turn)}`;
  const both = [1, -1].map((way): Portrait => {
    const round = way * azimuth;
    const results = formula.compute({ ...from, azimuth: round as typeof azimuth });
    const show = (key: 'pattern' | 'side' | 'planes'): string =>
      showResult(formula.outputs[key], results[key], style);
    const side = results.side === 'neither' ? 'neither short nor broad' : show('side');
    const key = `key ${degrees(round, style)}${hand(round)}, ${degrees(elevation, style)} ${elevation < 0 ? 'down' : 'up'}`;
    const name = `${way > 0 ? 'As set' : 'From the other side'}: ${side}, ${show('pattern')}`;
    return {
      lights: { azimuth: round, elevation, fillStops: fill ?? Infinity },
      name,
      says: `A child’s head, ${head}; ${key}: ${side}, ${show('pattern')} light, ${results.planes === Infinity ? 'one plane of the face without light' : `${show('planes')} from the darkest plane of the face to the brightest`}. ${fill === undefined ? 'No fill.' : `The fill is ${writeQuantity(fill, 'stop', { decimals: 1 }, style)} under the key.`}`,
    };
  });
  return { turn, nose: Math.min(40, Math.max(3, nose * 1000)), both };
};
