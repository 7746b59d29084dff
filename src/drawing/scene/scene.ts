/** A place in a set: metres to camera-right of the sitter, behind it as the camera sees it, and over the floor. */
export interface Place {
  readonly aside: number;
  readonly behind: number;
  readonly height: number;
}

/** What a light is, as the trade names it; the symbol follows from it. */
export type Source =
  | 'bare bulb'
  | 'standard reflector'
  | 'grid'
  | 'beauty dish'
  | 'softbox'
  | 'strip'
  | 'umbrella'
  | 'window';

/** A cone about a light's axis. */
export interface Beam {
  /** Radians, from edge to edge, where half the light of the axis is left. */
  readonly angle: number;
  /** Said at its edge, where there is more than one. */
  readonly name?: string;
  /** A beam to compare with: its edges alone, dashed. */
  readonly compared?: true;
}

export interface Light {
  readonly name: string;
  readonly source: Source;
  /** The middle of its front. */
  readonly at: Place;
  readonly aim: Place;
  /** Metres across its front; the other way too, unless told. */
  readonly width: number;
  readonly tall?: number;
  readonly beams: readonly Beam[];
  /** Lines of equal exposure within the first beam: stops under what the axis gets at this distance from the front. */
  readonly contours?: { readonly from: number; readonly stops: readonly number[] };
}

export interface Camera {
  readonly at: Place;
  /** Radians from edge to edge of the frame. */
  readonly across: number;
  readonly up: number;
  readonly upright: boolean;
  /** Radians, upwards. */
  readonly tilt?: number;
}

/** A round card, white or black. */
export interface Card {
  readonly name: string;
  readonly at: Place;
  readonly faces: Place;
  readonly width: number;
}

/** All that is drawn of a set. It knows nothing of what was asked about it. */
export interface Scene {
  readonly room?: {
    readonly front: number;
    readonly back: number;
    readonly half: number;
    readonly ceiling: number;
  };
  readonly backdrop?: { readonly behind: number; readonly half?: number; readonly top?: number };
  readonly platform?: {
    readonly front: number;
    readonly back: number;
    readonly half: number;
    readonly top: number;
  };
  readonly sitter?: { readonly kind: 'child' | 'rabbit'; readonly seat: Place };
  readonly camera?: Camera;
  readonly lights: readonly Light[];
  readonly cards?: readonly Card[];
  /** Names of the lights whose shadow of the sitter is drawn. */
  readonly shadows?: readonly string[];
}
