/** A source as the face sees it. */
export interface Size {
  readonly id: string;
  readonly name: string;
  /** Across, and how far off, in metres: together they give the angle. */
  readonly across: number;
  readonly distance: number;
}

/** Sources to try, as wide as the trade makes them; the third is the harbour set's key. */
export const SIZES: readonly Size[] = [
  { id: 'far', name: 'standard reflector, 18 cm, at 3 m', across: 0.18, distance: 3 },
  { id: 'reflector', name: 'standard reflector, 18 cm, at 1.2 m', across: 0.18, distance: 1.2 },
  { id: 'dish', name: 'beauty dish, 0.42 m, at 1.2 m', across: 0.42, distance: 1.2 },
  { id: 'softbox', name: 'softbox, 0.9 m, at 1.2 m', across: 0.9, distance: 1.2 },
  { id: 'near', name: 'softbox, 0.9 m, at 0.7 m', across: 0.9, distance: 0.7 },
];

/** The whole angle a source fills, radians. */
export const sizeOf = ({ across, distance }: Size): number =>
  2 * Math.atan(across / (2 * distance));

/** What the skin reflects of the light that falls on it. Our own even steps of about a stop, no measured skins. */
export const SKINS = [
  { id: 'deep', name: 'deep skin, reflects 5 %', reflectance: 0.05, grey: false },
  { id: 'brown', name: 'brown skin, 10 %', reflectance: 0.1, grey: false },
  { id: 'tan', name: 'tan skin, 20 %', reflectance: 0.2, grey: false },
  { id: 'fair', name: 'fair skin, 36 %', reflectance: 0.36, grey: false },
  { id: 'grey', name: 'a grey plaster head, 18 %', reflectance: 0.18, grey: true },
] as const;

/** The rim light's stops over the key, as metered at the hair. */
export const RIMS = [
  { id: 'none', name: 'none', stops: undefined },
  { id: 'under', name: 'a stop under the key', stops: -1 },
  { id: 'level', name: 'level with the key', stops: 0 },
] as const;

/** What is shown first. */
export const FIRST = { size: 'softbox', skin: 'fair', rim: 'none' } as const;
