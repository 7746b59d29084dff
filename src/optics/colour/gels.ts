import table from '../../../shared/tables/gels.json' with { type: 'json' };
import type { Chromaticity } from './planck.ts';

/** A coloured gel in one light: its place in the CIE 1931 diagram, and the share of the light it lets through. */
export interface GelColour extends Chromaticity {
  readonly id: string;
  readonly name: string;
  readonly hue: string;
  readonly through: number;
  /** The light it was measured in. */
  readonly light: Chromaticity & { readonly name: string };
}

/** Some sheets print only how much gets through. */
interface Under {
  readonly light: string;
  readonly Y: number;
  readonly x?: number;
  readonly y?: number;
}

const mired = (kelvin: number): number => 1e6 / kelvin;

/**
 * The coloured gels as printed for the light that is nearest to a source, in mired.
 *
 * Model: no interpolation; a gel's colour is given for the light it was measured in.
 * Source: the gels' own sheets, by way of shared/tables/gels.json.
 * @example coloursFor(5500).find(({ id }) => id === 'red')?.x // 0.67
 */
export const coloursFor = (source: number): readonly GelColour[] =>
  table.gels.flatMap(({ id, name, kind, hue, under }): GelColour[] => {
    if (kind !== 'colour') return [];
    const measured = under.flatMap(({ light: at, x, y, Y }: Under) => {
      const light = table.lights.find((listed) => listed.id === at);
      return light && x !== undefined && y !== undefined ? [{ light, x, y, through: Y }] : [];
    });
    const off = ({ light }: (typeof measured)[number]): number =>
      Math.abs(mired(light.kelvin) - mired(source));
    const [nearest] = measured.sort((a, b) => off(a) - off(b));
    return nearest ? [{ id, name, hue, ...nearest }] : [];
  });
