/** What a place on the sheet sets, by the keys of whoever asked: metres, or whatever they count in. */
export type Settings = Readonly<Record<string, number | readonly number[]>>;

/** A thing on a sheet that can be taken hold of: where it stands, what it is called, and what its place means. */
export interface Handle {
  /** Lasting, and unlike any other on the sheet. */
  readonly id: string;
  /** “rim light, from above”. */
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** Which way it goes; arrow keys for another way are left to the page. */
  readonly ways: 'both' | 'across' | 'up';
  /** Where it is, in words with numbers. */
  readonly says: string;
  /** Units on the sheet for a metre of the set: an arrow key goes a round distance in the set, whatever the scale. */
  readonly scale: number;
  /** The number an assistive device reads, and its ends. */
  readonly now: number;
  readonly ends: readonly [number, number];
  /** What a place on the sheet sets; pure, and true for the sheet it was made with. */
  readonly set: (x: number, y: number) => Settings;
}

/**
 * A dragged length as a studio would say it: whole centimetres, within what is allowed.
 * @example toCentimetre(1.4049, [0, 3]) // 1.4
 */
export const toCentimetre = (metres: number, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, Math.round(metres * 100) / 100)) + 0;
