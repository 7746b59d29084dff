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
    .join('')
    .replaceAll('\u00a0', ' ');
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
    /A light with its stand does not fit both beside the frame and above it\./,
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
  // 2 log2(5.6/4) = 0.971; 85/4 = 21.25 mm, 85/5.6 = 15.18 mm; the mark stands for 4√2 = 5.657
  [
    'f-stop',
    {},
    'From f/4 to f/5.6 is [0.97 stops] less light: the pupil goes from 21.3 mm to 15.2 mm across. The nearest third-stop mark is f/5.6, which stands for f/5.657.',
  ],
  ['f-stop', { to: '2', f: '' }, /^From f\/4 to f\/2 is \[2\.00 stops\] more light\. The/],
  [
    'f-stop',
    { to: '4' },
    /^From f\/4 to f\/4 is \[0\.00 stops\], the same light: .* mark is f\/4, /,
  ],
  ['f-stop', { from: '90', to: '128' }, /mark is f\/128, which stands for f\/128\.$/],
  // 2 · 250 mm · tan 1.5′ / (200/24) = 0.0262 mm; 43.27/0.0262 = 1653
  [
    'circle-of-confusion',
    {},
    /^Seen from 25 cm, a blur on the sensor may be \[0\.0262 mm\] across: the diagonal over 1650, stricter/,
  ],
  // 2134.7 to 2290.9 mm with 0.030 mm
  [
    'depth-of-field',
    { c: '0.03' },
    'At f/4 everything from 2.135 m to 2.291 m is sharp: [15.6 cm], 7.53 cm of it in front of the eye and 8.09 cm behind.',
  ],
  // m = 85/5915, D = 85/22: mD 0.05552 mm; 6 · 0.05552/(0.05552 ± 0.030) = 3.895 and 13.05 m
  [
    'depth-of-field',
    { c: '0.03', s: '6', N: '22' },
    'At f/22 everything from 3.895 m to 13.053 m is sharp: [9.16 m], 2.10 m of it in front of the eye and 7.05 m behind.',
  ],
  // m = 85/515, D = 85/1.4: mD 10.02 mm; 600 · 0.030/10.05 = 1.79 and 600 · 0.030/9.99 = 1.80 mm
  [
    'depth-of-field',
    { c: '0.03', s: '0.6', N: '1.4' },
    /is sharp: \[3\.59 mm\], 1\.79 mm of it in front of the eye and 1\.80 mm behind\.$/,
  ],
  [
    'depth-of-field',
    { s: 'infinity' },
    /^At f\/4 everything from \[[\d.]+ m\] to infinity is sharp\.$/,
  ],
  // f/3.72 is wanted
  [
    'face-in-focus',
    { c: '0.03' },
    'At f/4 the face is [covered]: 5.9 mm to spare behind the eye. The widest mark that covers it is f/4.',
  ],
  [
    'face-in-focus',
    { c: '0.03', N: '2.8' },
    /^At f\/2\.8 the face is \[not covered\]: \d+ mm short behind the eye\. The widest mark that covers it is f\/4\.$/,
  ],
  // 0.344/36 = 0.95 %; 21.25 · 1.5/2.21 = 14.4 mm
  [
    'background-blur',
    {},
    'A point of light on the backdrop becomes a disc [0.95 %] of the frame’s height across: creases and brush strokes much narrower than 14.4 mm on the cloth are lost.',
  ],
  // mD/36 = 0.85/36 = 2.4 %
  ['background-blur', { b: 'infinity' }, /a disc \[2\.4 %\] of the frame’s height across\.$/],
  ['background-blur', { b: '' }, /the blur is \[not given\]\.$/],
  // 2 m · (1 − cos 15°) = 68.1 mm of 43.6 mm
  [
    'recompose-error',
    { s: '2', angle: '15', N: '2.8', c: '0.03' },
    'Turning the camera after focusing leaves the focus [68 mm] behind the eye: 156 % of the depth in front of the focus. The eye is soft.',
  ],
  // 20 m · (1 − cos 60°)
  ['recompose-error', { s: '20', angle: '60' }, /leaves the focus \[10 m\] behind the eye/],
  // log2(16 · 160) = 11.32
  [
    'exposure-value',
    {},
    'A setting of f/4 at 1/160 s is [11.3 EV]. At ISO 100 that is also the light it suits.',
  ],
  [
    'exposure-value',
    { S: '400' },
    /At ISO 400 it suits light of 9\.3 EV, as a meter set to ISO 100/,
  ],
  ['exposure-value', { S: '' }, 'A setting of f/4 at 1/160 s is [11.3 EV].'],
  // log2(500 · 100/160/(250 · 16)) = −3.68; 1/(1 + 2^3.68) = 7.2 %; log2(1.078) = 0.11
  [
    'ambient-exposure',
    {},
    'The room’s light is [3.68 stops] under the flash, and the margin asks for 4 stops under. It is 7.2 % of the picture and lifts it by 0.11 stops.',
  ],
  ['ambient-exposure', { N: '5.6' }, /under the flash, clear of the margin of 4 stops\. It is/],
  [
    'ambient-exposure',
    { margin: '0' },
    /^The room’s light is \[3\.68 stops\] under the flash\. It/,
  ],
  ['ambient-exposure', { E: '100000' }, /\[3\.97 stops\] over the flash, and the margin asks/],
  [
    'ambient-exposure',
    { t: '1/250' },
    /faster than the sync speed: part of the frame stays dark\.$/,
  ],
  // 1 m/s · 0.04 · 1/1000 s; over 0.03 mm
  [
    'movement-blur',
    { c: '0.03' },
    'While the flash burns the image moves [0.040 mm], 1.3 circles of confusion. No ghost shows.',
  ],
  // 3.32/1000 s
  ['movement-blur', { t05: '1/1000', c: '0.03' }, /moves \[0\.13 mm\], 4\.4 circles/],
  ['movement-blur', { under: '3' }, /A ghost shows: the room’s light is strong enough to smear\.$/],
  [
    'movement-blur',
    { t01: '1/100' },
    /The flash outlasts the shutter: part of its light is lost\.$/,
  ],
  // 40 mm/s / 160 = 0.25 mm
  ['movement-blur', { t01: '' }, /^While the shutter is open the image moves \[0\.25 mm\]/],
  // 2.44 · 0.55 · 4 · 1.04 = 5.58 µm
  [
    'diffraction',
    { c: '0.03' },
    /^At f\/4 even a perfect lens draws a point as a disc \[5\.58 µm\] across\. The disc fills the circle of confusion at f\/21\.5\./,
  ],
  ['diffraction', { N: '' }, /^Without an f-number the disc is \[not given\]\./],
  // 7 · 9.80665 · 0.25 / 0.9 = 19.07 N
  [
    'stand-stability',
    { head: '0', modifier: '0', boom: '0', column: '7', ballast: '0' },
    /it tips at \[19\.1 N\].*A number clears nothing for use/,
  ],
  ['stand-stability', { place: '2' }, /\[tips over by itself\]\. It is the ballast that turns it/],
  // √(2 · 9.80665 · 1.32) = 5.09; √(2 · 9.80665 · 0.45) = 2.97
  ['platform-drop', { h: '0.45', head: '0.87' }, /\[5\.09 m\/s\], a foot at 2\.97 m\/s\. Keep/],
  // 660 W / 230 V = 2.87 A of 16 A
  ['mains-load', { load: '300 W; 300 W; 60 W' }, /draw \[2\.87 A\]; one circuit has 13\.1 A left/],
  // 0.6 − 60/120 = 0.1 s
  ['recycle-budget', { rate: '120' }, /comes \[0\.10 s\] too soon/],
  // 4 of 24 million pixels go: a sixth
  ['print-size', { hidden: '0' }, /\[254 px\/in\]; .* take 4.000.000 px, 17 % of the file/],
  ['viewing-distance', {}, /^From 65 cm the eye can use \[134 px\/in\]/],
  // 40 + 2 · (2 + 1.5) = 47 cm
  ['wrap-allowance', {}, /^The file is to be \[47\.0 cm by 57\.0 cm\]/],
  // 480/90 = 5.33, so 6; 6/0.85 = 7.06, so 8
  ['break-even', {}, /from \[6 sittings\] on: take 8 bookings\. Each sitting leaves 90\.00 EUR/],
];

describe('the sentence of a plate', () => {
  it.each(cases)('%s %o', (id, typed, expected) => {
    if (typeof expected === 'string') expect(says(id, typed)).toBe(expected);
    else expect(says(id, typed)).toMatch(expected);
  });

  it('sets the f of every f-number apart, and nothing else', () => {
    const state = new PlateState(calculator('f-stop'));
    const set = state.sentence().filter(({ text }) => text !== '');
    expect(set.filter(({ italic }) => italic).map(({ text }) => text)).toEqual(Array(4).fill('f'));
    expect(
      set.filter(({ italic }, i) => !italic && set[i - 1]?.italic).map(({ text }) => text[0]),
    ).toEqual(Array(4).fill('/'));
  });

  it('keeps a number on one line with its unit', () => {
    const said = (id: string): string =>
      new PlateState(calculator(id))
        .sentence()
        .map(({ text }) => text)
        .join('');
    expect(said('exposure-value')).toContain('At ISO\u00a0100 that');
    expect(said('exposure-value')).toContain('1/160\u00a0s is');
    expect(said('depth-of-field')).toContain('7.25\u00a0cm of it');
  });

  it('speaks feet and inches to whoever asked for them', () => {
    // 2.21 m = 87.0 in = 7′ 3″; 0.9 m = 35.4 in = 2′ 11½″
    expect(says('framing-distance', {}, true)).toMatch(
      /^For 2′ 11½″ from bottom to top, 85 mm must be \[7′ 3″\]/,
    );
  });
});
