/** What a number can be a number of. One brand, one SI unit each. */
export type Dimension = (typeof UNITS)[Unit][0];

/** A unit a record, a reader or a file may name. */
export type Unit = keyof typeof UNITS;

/**
 * Every unit: its dimension and its exact size in that dimension's SI unit.
 * Exact by definition: the inch (25.4 mm) and the foot (304.8 mm) by the international yard and pound agreement of
 * 1959; the lumen per square foot from the foot. Degrees rest on π, correct to the last bit of a double.
 */
export const UNITS = {
  m: ['length', 1],
  cm: ['length', 0.01],
  mm: ['length', 0.001],
  km: ['length', 1000],
  µm: ['length', 1e-6],
  nm: ['length', 1e-9],
  in: ['length', 0.0254],
  ft: ['length', 0.3048],
  m2: ['area', 1],
  rad: ['angle', 1],
  deg: ['angle', Math.PI / 180],
  arcmin: ['angle', Math.PI / 10800],
  sr: ['solid-angle', 1],
  s: ['time', 1],
  ms: ['time', 0.001],
  min: ['time', 60],
  h: ['time', 3600],
  K: ['temperature', 1],
  '1/K': ['reciprocal-temperature', 1],
  mired: ['reciprocal-temperature', 1e-6],
  lx: ['illuminance', 1],
  'cd/m2': ['luminance', 1],
  kg: ['mass', 1],
  g: ['mass', 0.001],
  N: ['force', 1],
  'N·m': ['torque', 1],
  'm/s': ['speed', 1],
  'km/h': ['speed', 1 / 3.6],
  J: ['energy', 1],
  W: ['power', 1],
  kW: ['power', 1000],
  A: ['current', 1],
  V: ['voltage', 1],
  px: ['pixels', 1],
  '1/m': ['resolution', 1],
  'px/cm': ['resolution', 100],
  'px/in': ['resolution', 1 / 0.0254],
  '1/s': ['rate', 1],
  '1/min': ['rate', 1 / 60],
  stop: ['stops', 1],
  EV: ['ev', 1],
  'f/': ['f-number', 1],
  ISO: ['iso', 1],
  EUR: ['money', 1],
  count: ['count', 1],
  '1': ['ratio', 1],
  '%': ['ratio', 0.01],
} as const satisfies Record<string, readonly [string, number]>;

/** The SI unit of a dimension as evaluate prints it: the first unit listed for it, or `1` where it is a bare number. */
export const siUnit = (dimension: Dimension): string => {
  if (dimension === 'f-number' || dimension === 'iso' || dimension === 'count') return '1';
  return Object.keys(UNITS).find((unit) => UNITS[unit as Unit][0] === dimension) ?? '1';
};

export const dimensionOf = (unit: Unit): Dimension => UNITS[unit][0];

/** The size of one unit in SI: multiply by it going in, divide by it coming out. */
export const factorOf = (unit: Unit): number => UNITS[unit][1];
