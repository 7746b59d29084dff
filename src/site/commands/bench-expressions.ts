/** A formula's main result once more: as text that mathjs compiles, and as the same arithmetic written out. */
export interface Rival {
  /** Inputs as evaluate takes them. */
  readonly given: Readonly<Record<string, string>>;
  /** The record's key of the result that both work out. */
  readonly result: string;
  /** The record's key of the input that is moved a little from call to call, so that nothing can be worked out once for all. */
  readonly moved: string;
  /** The numbers the expression names, in SI; the moved input goes by the name `x`. */
  readonly scope: Readonly<Record<string, number>>;
  readonly expression: string;
  readonly bare: (x: number) => number;
}

// Sides of the formats below, in metres, upright where the frame is upright.
const [across, up] = [0.024, 0.036];
const [smallAcross, smallUp] = [0.0236, 0.0158];

/**
 * One rival for each formula, by its id. A formula works out all its results; its rival only the main one, which
 * leaves the rival the advantage.
 */
export const rivals: Readonly<Record<string, Rival>> = {
  'angle-of-view': {
    given: { format: '36x24', 'focal-length': '85mm', 'subject-distance': '2.21m' },
    result: 'horizontal',
    moved: 'f',
    scope: { d: 0.036, s: 2.21 },
    expression: '2 * atan(d / (2 * x * (1 + x / (s - x))))',
    bare: (x) => 2 * Math.atan(0.036 / (2 * x * (1 + x / (2.21 - x)))),
  },
  'framing-distance': {
    given: {
      format: '36x24',
      orientation: 'portrait',
      'focal-length': '85mm',
      'frame-height': '0.9m',
    },
    result: 's',
    moved: 'f',
    scope: { h: up, H: 0.9 },
    expression: 'x * (1 + H / h)',
    bare: (x) => x * (1 + 0.9 / up),
  },
  'frame-size': {
    given: {
      format: '36x24',
      orientation: 'portrait',
      'focal-length': '85mm',
      'subject-distance': '2.21m',
    },
    result: 'W',
    moved: 'f',
    scope: { w: across, s: 2.21 },
    expression: 'w * (s - x) / x',
    bare: (x) => (across * (2.21 - x)) / x,
  },
  perspective: {
    given: { 'subject-distance': '1.6m', depth: '0.1m', 'compare-distance': '0.25m' },
    result: 'ratio',
    moved: 's',
    scope: { t: 0.1 },
    expression: '(x + t) / x',
    bare: (x) => (x + 0.1) / x,
  },
  'backdrop-coverage': {
    given: {
      format: '36x24',
      orientation: 'portrait',
      'focal-length': '85mm',
      'subject-distance': '2.21m',
      'backdrop-distance': '1.5m',
      'camera-height': '1.2m',
      'aim-height': '0.6m',
    },
    result: 'viewWidth',
    moved: 'f',
    scope: { w: across, h: up, s: 2.21, b: 1.5, r: -0.6 },
    expression:
      'w * (s + b) / (x * (1 + x / (hypot(s, r) - x)) * cos(atan2(r, s)) - h / 2 * abs(sin(atan2(r, s))))',
    bare: (x) => {
      const tilt = Math.atan2(-0.6, 2.21);
      const v = x * (1 + x / (Math.hypot(2.21, -0.6) - x));
      return (across * (2.21 + 1.5)) / (v * Math.cos(tilt) - (up / 2) * Math.abs(Math.sin(tilt)));
    },
  },
  'room-fit': {
    given: {
      format: '36x24',
      orientation: 'portrait',
      'frame-height': '0.9m',
      'focal-length': '85mm',
      'backdrop-distance': '1.5m',
      'backdrop-clearance': '0.3m',
      'camera-room': '0.8m',
      'room-length': '5m',
    },
    result: 'needed',
    moved: 'f',
    scope: { a: 0.3, b: 1.5, c: 0.8, h: up, H: 0.9 },
    expression: 'a + b + x * (2 + h / H + H / h) + c',
    bare: (x) => 0.3 + 1.5 + x * (2 + up / 0.9 + 0.9 / up) + 0.8,
  },
  'spotter-reach': {
    given: {
      'frame-width': '0.6m',
      'child-offset': '0.1m',
      'body-clearance': '0.25m',
      reach: '0.65m',
    },
    result: 'gap',
    moved: 'W',
    scope: { e: 0.1 },
    expression: 'x / 2 - abs(e)',
    bare: (x) => x / 2 - Math.abs(0.1),
  },
  equivalence: {
    given: {
      format: '23.6x15.8',
      'focal-length': '50mm',
      'f-number': 'f/4',
      'to-format': '36x24',
    },
    result: 'fEquivalent',
    moved: 'f',
    scope: { w: smallAcross, h: smallUp, W: 0.036, H: 0.024 },
    expression: 'x * hypot(W, H) / hypot(w, h)',
    bare: (x) => (x * Math.hypot(0.036, 0.024)) / Math.hypot(smallAcross, smallUp),
  },
};
