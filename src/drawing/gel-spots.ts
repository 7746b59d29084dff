import { writeNumber, writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import type { Style } from '../formula/show.ts';
import { coloursFor } from '../optics/colour/gels.ts';
import { planckian, type Chromaticity } from '../optics/colour/planck.ts';
import type formula from '../optics/light/gel.ts';

/** What the camera takes for white. */
export const BALANCES = [
  { id: 'source', name: 'the bare light' },
  { id: 'gel', name: 'the light behind the first gel' },
  { id: '5500', name: '5500 K' },
  { id: '3200', name: '3200 K' },
] as const;
export type Balance = (typeof BALANCES)[number]['id'];

/** A spot on the backdrop: its colour and how much of the bare light it is. */
export interface Spot extends Chromaticity {
  readonly name: string;
  /** The share of the bare light, the power left as it is. */
  readonly through: number;
  /** White where the colour was measured, if that is not the plate's own source. */
  readonly measured?: Chromaticity;
  readonly coordinates: string;
  readonly says: string;
}

export interface Spots {
  readonly source: Chromaticity;
  readonly white: Chromaticity;
  readonly spots: readonly Spot[];
}

/** The harbour set's background light: a grid of 20° at 2.0 m; the beam's edge is where it is half. */
export const BEAM = { angle: (20 * Math.PI) / 180, distance: 2 } as const;
/** The stretch of backdrop shown, in metres. */
export const CLOTH = { width: 1.2, height: 0.9 } as const;

/**
 * The light at a distance from the spot's middle, as a share of the middle's.
 *
 * Model: a beam that falls as cosⁿ, n = ln ½ / ln cos(angle/2), on a flat backdrop square to it, whose own slant and
 * distance take cos³ more.
 */
export const profile = (metres: number): number => {
  const cos = Math.cos(Math.atan(metres / BEAM.distance));
  return cos ** (Math.log(0.5) / Math.log(Math.cos(BEAM.angle / 2)) + 3);
};

export const GEL_COLOURS = coloursFor(5500).map(({ id, name, hue }) => ({ id, name, hue }));

/** The spot bare, behind the plate's own gel, and behind a coloured one. */
export const gelSpots = (
  given: Given,
  results: Results,
  { colour, balance }: { readonly colour: string; readonly balance: Balance },
  style: Style = {},
): Spots => {
  const { source: kelvin, tau } = given as unknown as Parameters<typeof formula.compute>[0];
  const source = planckian(kelvin);
  const behind = Number(results['temperature']);
  const gelled = planckian(behind);
  const chosen = coloursFor(kelvin).find(({ id }) => id === colour);
  const temperature = (value: number): string =>
    writeQuantity(value, 'K', { significant: 3 }, style);
  const spot = (
    name: string,
    { x, y }: Chromaticity,
    through: number,
    note: string,
    measured?: Chromaticity,
  ): Spot => {
    const [u, v] = [x, y].map((one) => writeNumber(one, { decimals: 3 }, style));
    const coordinates = `x\u00a0${u ?? ''}, y\u00a0${v ?? ''}`;
    const loss = writeQuantity(Math.abs(Math.log2(through)), 'stop', { decimals: 1 }, style);
    return {
      name,
      x,
      y,
      through,
      coordinates,
      says: `${name}: ${coordinates}, ${through > 0.999 ? 'all of the light' : `${loss} less light`}${note}.`,
      ...(measured && { measured }),
    };
  };
  return {
    source,
    white: balance === 'source' ? source : balance === 'gel' ? gelled : planckian(Number(balance)),
    spots: [
      spot(`no gel, ${temperature(kelvin)}`, source, 1, ''),
      spot(`the plate’s gel, ${temperature(behind)}`, gelled, tau, ''),
      ...(chosen
        ? [
            spot(
              `${chosen.name}, in ${chosen.light.name}`,
              chosen,
              chosen.through,
              ', as measured; so strong a colour has no colour temperature',
              chosen.light,
            ),
          ]
        : []),
    ],
  };
};
