import type { Angle } from '../../formula/quantities.ts';

/** A unit vector about the child: x to camera-right, y up, z towards the camera. */
export type Direction = readonly [number, number, number];

/**
 * The direction of a light from the child, by azimuth (0 towards the camera, positive to camera-right) and elevation.
 * @example direction(deg(45), deg(30)) // [0.612, 0.5, 0.612]
 */
export const direction = (azimuth: Angle, elevation: Angle): Direction => [
  Math.cos(elevation) * Math.sin(azimuth),
  Math.sin(elevation),
  Math.cos(elevation) * Math.cos(azimuth),
];
