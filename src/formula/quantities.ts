import { factorOf, type Dimension, type Unit, type UNITS } from './units.ts';

declare const dimension: unique symbol;

/**
 * A number of one dimension, always in SI. The brand exists for the compiler alone: at run time it is a plain number,
 * so bodies use ordinary arithmetic and wrap once, at the return.
 */
export type Quantity<D extends Dimension> = number & { readonly [dimension]: D };

/** The quantity a unit measures: `Measured<'mm'>` is a Length. */
export type Measured<U extends Unit> = Quantity<(typeof UNITS)[U][0]>;

type UnitOf<D extends Dimension> = {
  [U in Unit]: (typeof UNITS)[U][0] extends D ? U : never;
}[Unit];

export type Length = Quantity<'length'>;
export type Angle = Quantity<'angle'>;
export type FNumber = Quantity<'f-number'>;
export type Ratio = Quantity<'ratio'>;
export type Stops = Quantity<'stops'>;
export type Time = Quantity<'time'>;

/** Makes a constructor for one unit: `mm(85)` is 0.085 m. */
const of =
  <U extends Unit>(unit: U) =>
  (x: number): Measured<U> =>
    (x * factorOf(unit)) as Measured<U>;

export const m = of('m');
export const cm = of('cm');
export const mm = of('mm');
export const inches = of('in');
export const feet = of('ft');
export const rad = of('rad');
export const deg = of('deg');
export const arcmin = of('arcmin');
export const seconds = of('s');
export const stops = of('stop');
export const fNumber = of('f/');
export const ratio = of('1');
export const percent = of('%');

/**
 * Reads a quantity in a unit of its own dimension; any other unit is a compile error.
 * @example as(mm(85), 'm') // 0.085
 */
export const as = <D extends Dimension>(x: Quantity<D>, unit: UnitOf<D>): number =>
  x / factorOf(unit);
