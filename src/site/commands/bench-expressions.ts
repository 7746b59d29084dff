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
  'f-stop': {
    given: { from: 'f/4', to: 'f/5.6' },
    result: 'stops',
    moved: 'to',
    scope: { a: 4 },
    expression: '2 * log2(x / a)',
    bare: (x) => 2 * Math.log2(x / 4),
  },
  'circle-of-confusion': {
    given: {
      format: '36x24',
      enlargement: '8',
      'viewing-distance': '25cm',
      acuity: '3arcmin',
    },
    result: 'c',
    moved: 'v',
    scope: { a: (3 * Math.PI) / 10800, E: 8 },
    expression: '2 * x * tan(a / 2) / E',
    bare: (x) => (2 * x * Math.tan((3 * Math.PI) / 21600)) / 8,
  },
  'depth-of-field': {
    given: {
      'focal-length': '85mm',
      'f-number': 'f/4',
      'subject-distance': '2.21m',
      circle: '0.03mm',
    },
    result: 'near',
    moved: 's',
    scope: { f: 0.085, N: 4, c: 0.00003 },
    expression: 'x * (f / (x - f) * f / N) / (f / (x - f) * f / N + c)',
    bare: (x) => {
      const disc = ((0.085 / (x - 0.085)) * 0.085) / 4;
      return (x * disc) / (disc + 0.00003);
    },
  },
  'face-in-focus': {
    given: {
      'focal-length': '85mm',
      'f-number': 'f/4',
      'subject-distance': '2.21m',
      circle: '0.03mm',
      'reach-ahead': '25mm',
      'reach-behind': '75mm',
    },
    result: 'widest',
    moved: 's',
    scope: { f: 0.085, c: 0.00003, a: 0.025, b: 0.075 },
    expression: 'f * f / (x - f) / c * max(a / (x - a), b / (x + b))',
    bare: (x) =>
      ((0.085 * 0.085) / (x - 0.085) / 0.00003) *
      Math.max(0.025 / (x - 0.025), 0.075 / (x + 0.075)),
  },
  'background-blur': {
    given: {
      format: '36x24',
      'focal-length': '85mm',
      'f-number': 'f/4',
      'subject-distance': '2.21m',
      'backdrop-distance': '1.5m',
    },
    result: 'sensor',
    moved: 's',
    scope: { f: 0.085, N: 4, b: 1.5 },
    expression: 'f / (x - f) * f / N * b / (x + b)',
    bare: (x) => ((((0.085 / (x - 0.085)) * 0.085) / 4) * 1.5) / (x + 1.5),
  },
  'recompose-error': {
    given: { 'subject-distance': '2m', angle: '15deg' },
    result: 'error',
    moved: 's',
    scope: { a: Math.PI / 12 },
    expression: 'x * (1 - cos(a))',
    bare: (x) => x * (1 - Math.cos(Math.PI / 12)),
  },
  'exposure-value': {
    given: { 'f-number': 'f/4', shutter: '1/160s' },
    result: 'ev',
    moved: 'N',
    scope: { t: 1 / 160 },
    expression: 'log2(x * x / t)',
    bare: (x) => Math.log2(x * x * 160),
  },
  'ambient-exposure': {
    given: { illuminance: '500lx', 'f-number': 'f/8', shutter: '1/160s', iso: '100' },
    result: 'over',
    moved: 'N',
    scope: { E: 500, S: 100, t: 1 / 160, C: 250 },
    expression: 'log2(E * S * t / (C * x * x))',
    bare: (x) => Math.log2((500 * 100) / 160 / (250 * x * x)),
  },
  'movement-blur': {
    given: { speed: '1m/s', magnification: '0.04', 'flash-t01': '1/1000s' },
    result: 'flash',
    moved: 'u',
    scope: { m: 0.04, t: 1 / 1000 },
    expression: 'x * m * t',
    bare: (x) => (x * 0.04) / 1000,
  },
  diffraction: {
    given: { 'f-number': 'f/8', wavelength: '550nm', magnification: '0.04' },
    result: 'airy',
    moved: 'N',
    scope: { l: 550e-9, m: 0.04 },
    expression: '2.44 * l * x * (1 + m)',
    bare: (x) => 2.44 * 550e-9 * x * 1.04,
  },
  falloff: {
    given: { near: '1.2m', far: '1.5m' },
    result: 'stops',
    moved: 'far',
    scope: { d: 1.2 },
    expression: '2 * log2(x / d)',
    bare: (x) => 2 * Math.log2(x / 1.2),
  },
  'extended-source': {
    given: { shape: 'disc', width: '0.9m', distance: '1.2m', luminance: '2000cd/m2' },
    result: 'E',
    moved: 'd',
    scope: { L: 2000, r: 0.45 },
    expression: 'pi * L * r * r / (r * r + x * x)',
    bare: (x) => (Math.PI * 2000 * 0.2025) / (0.2025 + x * x),
  },
  'flash-exposure': {
    given: { 'guide-number': '56m', distance: '1.2m', iso: '100', power: '1/16' },
    result: 'N',
    moved: 'd',
    scope: { G: 56, P: 1 / 16 },
    expression: 'G / x * sqrt(P)',
    bare: (x) => 14 / x,
  },
  softness: {
    given: { 'source-width': '0.9m', distance: '1.2m' },
    result: 'angle',
    moved: 'D',
    scope: { w: 0.9 },
    expression: '2 * atan(w / (2 * x))',
    bare: (x) => 2 * Math.atan(0.45 / x),
  },
  'light-on-face': {
    given: { 'key-azimuth': '45deg', 'key-elevation': '30deg', 'nose-length': '15mm' },
    result: 'across',
    moved: 'azimuth',
    scope: { n: 0.015 },
    expression: 'n * tan(x)',
    bare: (x) => 0.015 * Math.tan(x),
  },
  'lighting-ratio': {
    given: { key: 'f/8', fill: 'f/5.6' },
    result: 'ratio',
    moved: 'key',
    scope: { F: 5.6 * 5.6 },
    expression: '(x * x + F) / F',
    bare: (x) => (x * x + 31.36) / 31.36,
  },
  'room-fill': {
    given: {
      'key-distance': '2m',
      'room-length': '5m',
      'room-width': '3.6m',
      ceiling: '2.6m',
      reflectance: '0.7',
    },
    result: 'under',
    moved: 'd',
    scope: { A: 80.72, r: 0.7 },
    expression: '-log2(pi * x * x * r / (A * (1 - r)))',
    bare: (x) => -Math.log2((Math.PI * x * x * 0.7) / (80.72 * 0.3)),
  },
  'fill-card': {
    given: { size: '1m', distance: '0.6m', reflectance: '0.9' },
    result: 'under',
    moved: 'd',
    scope: { r: 0.5, p: 0.9 },
    expression: '-log2(p * r * r / (r * r + x * x))',
    bare: (x) => -Math.log2((0.9 * 0.25) / (0.25 + x * x)),
  },
  'beam-spread': {
    given: { angle: '20deg', distance: '2m' },
    result: 'width',
    moved: 'D',
    scope: { a: Math.PI / 9 },
    expression: '2 * x * tan(a / 2)',
    bare: (x) => 2 * x * Math.tan(Math.PI / 18),
  },
  'backdrop-exposure': {
    given: {
      'key-distance': '1.2m',
      'backdrop-distance': '1.5m',
      'light-distance': '2m',
      'light-stops': '0',
    },
    result: 'against',
    moved: 'b',
    scope: { k: 1.2, d: 2 },
    expression: 'log2((k / d) ^ 2 + (k / (k + x)) ^ 2)',
    bare: (x) => Math.log2(0.36 + (1.2 / (1.2 + x)) ** 2),
  },
  gel: {
    given: { source: '5500K', 'gel-shift': '109mired' },
    result: 'temperature',
    moved: 'source',
    scope: { s: 109e-6 },
    expression: '1 / (1 / x + s)',
    bare: (x) => 1 / (1 / x + 109e-6),
  },
  'rim-light': {
    given: {
      'light-behind': '1.2m',
      'light-aside': '0.9m',
      'light-height': '0.9m',
      'beam-angle': '20deg',
      'set-depth': '1.6m',
      'camera-distance': '2.21m',
      'focal-length': '85mm',
      format: '36x24',
      'light-stops': '0',
      'key-distance': '1.2m',
    },
    result: 'over',
    moved: 'key',
    scope: { r: Math.hypot(1.2, 0.9, 0.9) },
    expression: '2 * log2(x / r)',
    bare: (x) => 2 * Math.log2(x / Math.hypot(1.2, 0.9, 0.9)),
  },
  feathering: {
    given: {
      'beam-angle': '60deg',
      'near-distance': '1.2m',
      'far-distance': '1.6m',
      'angle-between': '20deg',
      aim: '25deg',
    },
    result: 'after',
    moved: 'far',
    scope: {
      n: Math.log(0.5) / Math.log(Math.cos(Math.PI / 6)),
      d: 1.2,
      a: Math.PI / 7.2,
      b: -Math.PI / 36,
    },
    expression: 'log2((cos(a) ^ n / d ^ 2) / (cos(b) ^ n / x ^ 2))',
    bare: (x) =>
      Math.log2(
        Math.cos(Math.PI / 7.2) ** 4.818841679306418 /
          1.44 /
          (Math.cos(Math.PI / 36) ** 4.818841679306418 / x ** 2),
      ),
  },
  'print-size': {
    given: {
      'pixel-width': '4000px',
      'pixel-height': '6000px',
      'print-width': '40cm',
      'print-height': '60cm',
    },
    result: 'resolution',
    moved: 'w',
    scope: { W: 4000, H: 6000, h: 0.6 },
    expression: 'min(W, H * x / h) / x',
    bare: (x) => Math.min(4000, (6000 * x) / 0.6) / x,
  },
  'viewing-distance': {
    given: { 'viewing-distance': '65cm' },
    result: 'resolution',
    moved: 'D',
    scope: { a: Math.PI / 10800 },
    expression: '1 / (x * tan(a))',
    bare: (x) => 1 / (x * Math.tan(Math.PI / 10800)),
  },
  'wrap-allowance': {
    given: {
      'front-width': '40cm',
      'front-height': '50cm',
      'edge-depth': '20mm',
      'fold-over': '15mm',
      edge: 'wrapped',
    },
    result: 'fileWidth',
    moved: 'w',
    scope: { e: 0.02, u: 0.015 },
    expression: 'x + 2 * (e + u)',
    bare: (x) => x + 2 * (0.02 + 0.015),
  },
  'stand-stability': {
    given: { 'column-mass': '7kg', 'foot-radius': '0.5m', legs: '3', 'pull-height': '0.9m' },
    result: 'pullForce',
    moved: 'column',
    scope: { g: 9.80665, a: 0.5 * Math.cos(Math.PI / 3), h: 0.9 },
    expression: 'x * g * a / h',
    bare: (x) => (x * 9.80665 * 0.5 * Math.cos(Math.PI / 3)) / 0.9,
  },
  'platform-drop': {
    given: { 'platform-height': '0.45m' },
    result: 'foot',
    moved: 'h',
    scope: { g: 9.80665 },
    expression: 'sqrt(2 * g * x)',
    bare: (x) => Math.sqrt(2 * 9.80665 * x),
  },
  'mains-load': {
    given: {
      'flash-energy': '400J',
      'cycle-time': '1s',
      efficiency: '0.7',
      voltage: '230V',
      rating: '16A',
    },
    result: 'current',
    moved: 'energy',
    scope: { t: 1, n: 0.7, U: 230 },
    expression: 'x / (t * n) / U',
    bare: (x) => x / 0.7 / 230,
  },
  'recycle-budget': {
    given: { 'flash-energy': '25J', 'recycle-time': '0.6s', 'frame-rate': '20' },
    result: 'hour',
    moved: 'energy',
    scope: { r: 1 / 3, t: 0.6 },
    expression: 'x * min(r, 1 / t) * 3600',
    bare: (x) => x * Math.min(1 / 3, 1 / 0.6) * 3600,
  },
  'break-even': {
    given: { 'fixed-cost': '480', price: '120', 'variable-cost': '30' },
    result: 'sittings',
    moved: 'fixed',
    scope: { p: 120, v: 30 },
    expression: 'ceil(x / (p - v))',
    bare: (x) => Math.ceil(x / 90),
  },
};
