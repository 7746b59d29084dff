import { describe, expect, it } from 'vitest';
import { PlateState } from '../../src/widgets/parts/plate-state.ts';
import { calculator } from './calculators.ts';

type Case = readonly [string, Readonly<Record<string, string>>, RegExp | string];

/** The sentence of a plate after some fields were typed into. */
const says = (id: string, typed: Readonly<Record<string, string>>, imperial = false): string => {
  const state = new PlateState(calculator(id));
  for (const [key, text] of Object.entries(typed)) state.type(key, text);
  if (imperial) state.measure('imperial');
  return state
    .sentence()
    .map(({ text, main }) => (main ? `[${text}]` : text))
    .join('');
};

// The numbers come from the issue's own cases and from hand arithmetic beside them.
const cases: readonly Case[] = [
  // 2 arctan(36 / (2 · 85 · 1.04)) = 2 arctan 0.20362 = 23.0°
  ['angle-of-view', {}, /^With 85 mm focused at 2\.21 m the frame takes in \[23\.0°\]/],
  // 2 arctan(36 / 100) = 39.6°
  [
    'angle-of-view',
    { f: '50', s: 'infinity' },
    /50 mm focused at infinity the frame takes in \[39\.6°\]/,
  ],
  // 85 · (1 + 900/36) = 2210 mm
  [
    'framing-distance',
    {},
    'For 0.90 m from bottom to top, 85 mm must be [2.21 m] from the child, lens to eye. The frame is then 0.600 m across.',
  ],
  // m = 36/50 = 0.72, more than a quarter of life size
  ['framing-distance', { H: '5 cm' }, /Few lenses focus this near/],
  [
    'frame-size',
    {},
    'With 85 mm at 2.21 m the frame takes in [0.900 m] from bottom to top and 0.600 m across.',
  ],
  [
    'frame-size',
    { s: 'infinity' },
    /^Focused at infinity the frame has no size to name: it is \[∞\]/,
  ],
  ['frame-size', { from: 'sensor' }, /85 mm at 2\.21 m from the sensor the frame/],
  // (1.6 + 0.1)/1.6 = 1.0625, shown to three decimals
  ['perspective', { s: '1.6' }, /^From 1\.60 m the nose is drawn \[1\.06[23]\] times/],
  ['perspective', { compare: '' }, /behind it\. Only the distance does this; no lens can\.$/],
  ['perspective', { depth: '0' }, /without depth nothing changes\.$/],
  // 24 mm · 3.71 m / 88.4 mm = 1.007 m; (2.7 − 1.007 − 0.2)/2 = 0.746 m
  [
    'backdrop-coverage',
    {},
    /^1\.50 m behind the child, 85 mm shows \[1\.01 m\] of backdrop across: 0\.75 m to spare on each side, 0\.10 m of margin kept\./,
  ],
  // Lens 0.61 m up: the lower edge lies 3.71 · 18/88.4 = 0.755 m under it, 0.145 m below the floor.
  [
    'backdrop-coverage',
    {},
    /The lowest 9\.6 % of the frame is floor, from 3\.00 m in front of the camera\.$/,
  ],
  // Lens at 1.2 m: the lower edge is 0.445 m up, no floor; the upper 1.955 + 0.1 under 2.4 m.
  ['backdrop-coverage', { c: '1.2' }, /margin kept\.$/],
  // (1.0 − 1.007 − 0.2)/2 = −0.104 m
  ['backdrop-coverage', { width: '1' }, /: 0\.10 m short on each side/],
  ['backdrop-coverage', { e: '0.5' }, /: 0\.25 m to spare on the side the child sits nearer to/],
  // 1.7 + 0.7554 + 0.1 = 2.5554 m before a 2.4 m backdrop
  ['backdrop-coverage', { c: '1.7' }, /It is 0\.16 m short at the top\./],
  ['backdrop-coverage', { width: '', c: '' }, /of backdrop across\.$/],
  // 85 · (2 + 0.04 + 25) = 2298.4 mm; + 0.3 + 1.5 + 0.8 = 4.90 m
  ['room-fit', {}, /\[89 mm\] for a frame 0\.90 m tall\. 85 mm needs 4\.90 m: 0\.10 m to spare\./],
  // A 4.2 m room takes 1600/27.04 = 59 mm and is 0.70 m short.
  [
    'room-fit',
    { roomLength: '4.2' },
    /^A room 4\.20 m long takes at most \[59 mm\].* 85 mm needs 4\.90 m: 0\.70 m short\./,
  ],
  ['room-fit', { roomLength: '2' }, /^A room 2\.00 m long takes \[no lens\] at all/],
  ['room-fit', { roomLength: '' }, /^85 mm needs \[4\.90 m\] from wall to wall\./],
  ['room-fit', { roomLength: '', f: '' }, /\[not given\]/],
  // 1.007 m of backdrop between walls 0.9 m apart
  ['room-fit', { roomWidth: '0.9' }, /A side wall comes into the picture at the backdrop\./],
  [
    'room-fit',
    { ceiling: '2' },
    /A light with its stand does not fit beside the frame and above it\./,
  ],
  // 0.60/2 = 0.30 m; 0.30 + 0.25 ≤ 0.65
  [
    'spotter-reach',
    {},
    'From the child to the nearer edge of the frame it is [0.30 m]. With 0.25 m kept clear, a reach of 0.65 m holds on. The spotter is never the photographer.',
  ],
  // 1.6/2 + 0.25 − 0.65 = 0.40 m
  [
    'spotter-reach',
    { W: '1.6' },
    /0\.40 m beyond a reach of 0\.65 m: leave the adult in the picture, and remove them later with a second, empty frame\. Never step back\. The spotter is never the photographer\.$/,
  ],
  [
    'spotter-reach',
    { e: '0.5' },
    /^The child sits outside the frame: its edge is \[0\.20 m\] the wrong side of the child\./,
  ],
  // diagonals 28.40 and 43.27 mm: 0.6564; 85 · 0.6564 = 55.8 mm, f/4 · 0.6564 = f/2.6
  [
    'equivalence',
    {},
    /^What 85 mm at f\/4 shows on 36 × 24 mm, \[55\.8 mm\] at f\/2\.6 shows on .*Exposure does not translate: f\/4 stays f\/4 for the meter\.$/,
  ],
  ['equivalence', { f: '' }, /focal lengths are multiplied by \[0\.656\]; f\/4 becomes f\/2\.6/],
  ['equivalence', { N: '' }, /the same view from the same place\.$/],
  ['equivalence', { f: '', N: '' }, /multiplied by \[0\.656\]\.$/],
  ['equivalence', { N: '5.6', marks: 'exact' }, /f\/5\.6, by the exact value of its mark,/],
];

describe('the sentence of a plate', () => {
  it.each(cases)('%s %o', (id, typed, expected) => {
    if (typeof expected === 'string') expect(says(id, typed)).toBe(expected);
    else expect(says(id, typed)).toMatch(expected);
  });

  it('speaks feet and inches to whoever asked for them', () => {
    // 2.21 m = 87.0 in = 7′ 3″; 0.9 m = 35.4 in = 2′ 11½″
    expect(says('framing-distance', {}, true)).toMatch(
      /^For 2′ 11½″ from bottom to top, 85 mm must be \[7′ 3″\]/,
    );
  });
});
