import {
  framed,
  type Aspect,
  type Format,
  type Frame,
  type Orientation,
} from '../optics/lens/frame.ts';
import type { Box } from './clip.ts';
import { corners, type Pen } from './pen.ts';

/** A frame as the camera shows it, set into a place on the sheet. */
export interface Finder {
  /** The print's part of it; the whole frame where no print is cut. */
  readonly print: Box;
  readonly whole: Box;
  readonly middle: readonly [number, number];
  /** Units a metre of sensor. */
  readonly scale: number;
  readonly frame: Frame;
  readonly cropped: boolean;
}

interface Shot {
  readonly format: Format;
  readonly orientation: Orientation;
  readonly aspect: Aspect | null;
}

export const finder = (shot: Shot, [left, top, right, bottom]: Box): Finder => {
  const file = framed({ ...shot, aspect: null });
  const frame = framed(shot);
  const scale = Math.min((right - left) / file.across, (bottom - top) / file.up);
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const around = ({ across, up }: Frame): Box => {
    const [w, h] = [(across * scale) / 2, (up * scale) / 2];
    return [x - w, y - h, x + w, y + h];
  };
  return {
    print: around(frame),
    whole: around(file),
    middle: [x, y],
    scale,
    frame,
    cropped: frame.across < file.across || frame.up < file.up,
  };
};

/** The frame's line, and the print's in dashes, over what they hold. */
export const rim = (on: Pen, { print, whole, cropped }: Finder): void => {
  on.ring('frame', corners(whole));
  if (cropped) on.ring('hidden', corners(print));
};
