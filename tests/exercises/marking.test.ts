import { describe, expect, it } from 'vitest';
import { markDesign } from '../../src/exercises/design.ts';
import { inWords, markChoice, markNumber, tooCoarse } from '../../src/exercises/mark.ts';
import { gapOf } from '../../src/exercises/practical.ts';
import { holds, spanOf, usualTolerance } from '../../src/exercises/span.ts';
import type { Template } from '../../src/exercises/template.ts';
import { complaintsOf } from '../../src/exercises/trial.ts';
import { keyOf, variantOf } from '../../src/exercises/variant.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

const common = {
  version: 1,
  title: 'A title',
  skill: 'framing',
  difficulty: 1,
  also: {},
  hints: ['First.', 'Then.'],
  solution: 'It is {subject-distance}.',
} as const;

const walkBack = {
  ...common,
  id: 'walk-back',
  kind: 'numeric',
  formula: 'framing-distance',
  given: { format: '36x24', orientation: 'portrait' },
  vary: {
    'focal-length': { pick: ['50 mm', '85 mm', '105 mm'] },
    'frame-height': { from: '0.6 m', to: '1.2 m', step: '0.05 m' },
  },
  ask: 'subject-distance',
  text: '{focal-length} frames {frame-height}, the camera {orientation}: how far?',
  alsoRight: ['sensor-to-subject'],
  turns: [
    { slip: 'wrong-side', say: 'The long side is upright.', credit: 0.5 },
    { factor: 1000, say: 'Those are millimetres.', credit: 0.75 },
  ],
} as const satisfies Template;

const atSeed = (seed: number) => keyOf(variantOf(walkBack, recordOf, seed), recordOf);

describe('tolerance', () => {
  it.each([
    // 2 % of 2 m either way.
    ['m', undefined, 2, 1.96, 2.04],
    // Half a degree, in radians.
    ['deg', undefined, 1, 1 - Math.PI / 360, 1 + Math.PI / 360],
    // A sixth of a stop of an f-number is a factor of 2^(1/12) = 1.05946.
    ['f/', undefined, 4, 4 / 1.0594630943592953, 4 * 1.0594630943592953],
    // Of a time or an ISO, 2^(1/6) = 1.12246.
    ['s', { fraction: true }, 0.005, 0.005 / 1.122462048309373, 0.005 * 1.122462048309373],
    ['ISO', undefined, 100, 100 / 1.122462048309373, 112.2462048309373],
    ['stop', undefined, -1, -1 - 1 / 6, -1 + 1 / 6],
  ] as const)('of an answer in %s', (unit, digits, key, low, high) => {
    const [from, to] = spanOf(key, usualTolerance(unit, digits));
    expect(from).toBeCloseTo(low, 12);
    expect(to).toBeCloseTo(high, 12);
  });

  it('takes its own ends, and nothing beyond', () => {
    const span = spanOf(1, { relative: 0.01, absolute: 0 });
    expect(holds(span, 1.01)).toBe(true);
    expect(holds(span, 0.99)).toBe(true);
    expect(holds(span, 1.0101)).toBe(false);
    expect(holds(spanOf(-4, usualTolerance('f/')), -4)).toBe(true);
  });
});

describe('a number', () => {
  it('has the same key for the same seed, worked from what is shown', () => {
    const variant = variantOf(walkBack, recordOf, 3);
    expect(variantOf(walkBack, recordOf, 3).drawn).toEqual(variant.drawn);
    const f = Number.parseFloat(variant.drawn['focal-length'] ?? '') / 1000;
    const H = Number.parseFloat(variant.drawn['frame-height'] ?? '');
    // f(1 + H/h), the upright 36 mm.
    expect(atSeed(3).value).toBeCloseTo(f * (1 + H / 0.036), 12);
  });

  it('says its numbers in the reader’s style', () => {
    const variant = variantOf(
      {
        ...walkBack,
        vary: { 'focal-length': { pick: ['85 mm'] }, 'frame-height': { pick: ['0.90 m'] } },
      },
      recordOf,
      0,
    );
    expect(variant.say(walkBack.text)).toBe('85 mm frames 0.90 m, the camera upright: how far?');
    expect(variant.say(walkBack.text, { decimal: 'comma' })).toContain('0,90 m');
    // 85 (1 + 900/36) = 2210 mm.
    expect(variant.say(walkBack.solution)).toBe('It is 2.21 m.');
  });

  const fixed = keyOf(
    variantOf(
      {
        ...walkBack,
        vary: {},
        given: { ...walkBack.given, 'focal-length': '85 mm', 'frame-height': '0.90 m' },
      },
      recordOf,
      0,
    ),
    recordOf,
  );

  it.each([
    ['2.21 m', 'right'],
    ['2,21', 'right'],
    ['221 cm', 'right'],
    ['7 ft 3 in', 'right'],
    ['2.25', 'right'],
    // From the sensor: 2.21 + 0.0884 = 2.2984 m.
    ['2.30 m', 'right'],
    // The short side for the height: 0.085 (1 + 0.9/0.024) = 3.27 m.
    ['3.27', 'turn'],
    ['2210', 'turn'],
    ['2.6', 'wrong'],
    ['', 'unreadable'],
    ['far', 'unreadable'],
    ['2.21 kg', 'unreadable'],
    ['2,210', 'ambiguous'],
    ['1e309', 'unreadable'],
    ['NaN', 'unreadable'],
  ])('%s is %s', (text, kind) => {
    expect(markNumber(text, fixed).kind).toBe(kind);
  });

  it('gives a wrong turn its part of the mark, and says which it was', () => {
    expect(markNumber('3.27', fixed)).toMatchObject({
      credit: 0.5,
      say: 'The long side is upright.',
    });
  });

  it('says what is accepted, in the reader’s units', () => {
    expect(inWords(fixed.span, fixed.asked)).toBe('2.166 m to 2.254 m');
    expect(inWords(fixed.span, fixed.asked, { decimal: 'comma' })).toBe('2,166 m to 2,254 m');
    expect(inWords(fixed.span, fixed.asked, { system: 'imperial' })).toMatch(
      /^7′ 1.*″ to 7′ 4.*″$/,
    );
  });

  it('hints at digits that are too few, and not at fractions', () => {
    expect(tooCoarse('2', fixed)).toContain('a digit more');
    expect(tooCoarse('2.2', fixed)).toContain('a digit more');
    expect(tooCoarse('2.21', fixed)).toBeUndefined();
    expect(tooCoarse('2 1/5', fixed)).toBeUndefined();
    // In whatever unit it was written; and whoever is far off has another trouble.
    expect(tooCoarse('221 cm', fixed)).toBeUndefined();
    expect(tooCoarse('2210 mm', fixed)).toBeUndefined();
    expect(tooCoarse('7 ft', fixed)).toContain('a digit more');
    expect(tooCoarse('7 ft 3 in', fixed)).toBeUndefined();
    expect(tooCoarse('9', fixed)).toBeUndefined();
  });

  it('is sound for a hundred seeds, by its own trial', () => {
    for (let seed = 0; seed < 100; seed++)
      expect(complaintsOf(walkBack, recordOf, seed)).toEqual([]);
  });

  it('tells an author of a turn that leads to the key', () => {
    const same = { ...walkBack, turns: [{ factor: 1.01, say: 'No turn.', credit: 0 }] };
    expect(complaintsOf(same, recordOf, 0).join()).toContain('leads to the key');
  });
});

describe('a choice', () => {
  const template = {
    ...common,
    id: 'which',
    kind: 'choice',
    formula: 'framing-distance',
    given: {},
    vary: {},
    text: 'Which?',
    solution: 'These.',
    keepOrder: false,
    options: [
      { text: 'a', right: true, feedback: 'Yes.' },
      { text: 'b', right: false, feedback: 'Not b.' },
      { text: 'c', right: true, feedback: 'Yes.' },
      { text: 'd', right: false, feedback: 'Not d.' },
    ],
  } as const satisfies Template;
  const variant = variantOf(template, recordOf, 5);

  it.each([
    [[0, 2], 'right', 1],
    [[0], 'turn', 0.5],
    [[0, 1, 2], 'turn', 0.5],
    [[0, 1], 'wrong', 0],
    [[0, 1, 2, 3], 'wrong', 0],
    [[1], 'wrong', 0],
  ] as const)('of %s is %s', (chosen, kind, credit) => {
    expect(markChoice(chosen, variant)).toMatchObject({ kind, credit });
  });

  it('costs nothing where nothing was chosen, or what is not there', () => {
    expect(markChoice([], variant).kind).toBe('unreadable');
    expect(markChoice([7], variant).kind).toBe('unreadable');
  });

  it('shows every answer once, in an order of the seed', () => {
    expect(variant.order.toSorted()).toEqual([0, 1, 2, 3]);
    const orders = new Set(
      Array.from({ length: 50 }, (_, seed) => variantOf(template, recordOf, seed).order.join()),
    );
    expect(orders.size).toBeGreaterThan(12);
  });
});

describe('a design', () => {
  const template = {
    ...common,
    id: 'small-room',
    difficulty: 2,
    kind: 'design',
    formula: 'room-fit',
    given: {},
    vary: { 'room-length': { pick: ['4.2 m'] } },
    text: 'Seat a two-year-old in a {room-length} room.',
    solution: 'One way.',
    settings: [
      { name: 'focal-length', formula: 'room-fit', input: 'focal-length' },
      { name: 'aperture', formula: 'face-in-focus', input: 'f-number' },
    ],
    requirements: [
      {
        say: 'It fits in {room-length}.',
        formula: 'room-fit',
        given: {
          format: '36x24',
          orientation: 'portrait',
          'frame-height': '0.90 m',
          'focal-length': '{focal-length}',
          'backdrop-distance': '1 m',
          'backdrop-clearance': '0.3 m',
          'camera-room': '0.8 m',
          'room-length': '{room-length}',
        },
        result: 'spare',
        atLeast: '0 m',
      },
      {
        say: 'Eyes to ears are sharp.',
        formula: 'face-in-focus',
        given: {
          format: '36x24',
          'focal-length': '{focal-length}',
          'f-number': '{aperture}',
          'subject-distance': '2 m',
          'reach-ahead': '25 mm',
          'reach-behind': '75 mm',
        },
        result: 'covered',
        is: 'yes',
      },
    ],
    accepted: [{ 'focal-length': '50 mm', aperture: 'f/4' }],
    nearMiss: [{ 'focal-length': '85 mm', aperture: 'f/8' }],
  } as const satisfies Template;
  const variant = variantOf(template, recordOf, 0);

  it('takes any settings that keep the brief, and shows every margin', () => {
    const verdict = markDesign({ 'focal-length': '50', aperture: '4' }, variant, recordOf);
    if (verdict.kind !== 'marked') throw new Error('It could not be read.');
    expect(verdict.credit).toBe(1);
    // 50 (1 + 900/36) = 1.30 m; with 0.8 behind, 1 and 0.3 before it 3.4 of 4.2 m.
    expect(verdict.held[0]).toMatchObject({ say: 'It fits in 4.20 m.', kept: true });
    expect(verdict.held[0]?.margin).toBeGreaterThan(0.6);
    expect(verdict.held[0]?.came).toMatch(/to spare$/);
  });

  it('gives part of the mark for part of the brief, and says what is missing', () => {
    const verdict = markDesign({ 'focal-length': '85 mm', aperture: 'f/8' }, variant, recordOf);
    if (verdict.kind !== 'marked') throw new Error('It could not be read.');
    expect(verdict.credit).toBe(0.5);
    expect(verdict.held[0]).toMatchObject({ kept: false });
    expect(verdict.held[0]?.came).toMatch(/missing$/);
  });

  it('counts a power in stops, and says once what is its own margin', () => {
    const set = bank.find(({ template }) => template.id === 'the-whole-set')?.template;
    if (set?.kind !== 'design') throw new Error('The whole set is no design.');
    const verdict = markDesign(set.accepted[0] ?? {}, variantOf(set, recordOf, 3), recordOf, {}, true); // prettier-ignore
    if (verdict.kind !== 'marked') throw new Error('It could not be read.');
    const came = verdict.held.map((one) => one.came);
    // 56/1.2 m through 2 stops is f/23.3: f/5.6 needs (5.6/23.3)² = 1/17.4 of it, and half is 3.1 stops more.
    expect(came.at(-1)).toBe('1/17.4: 3.1 stops to spare');
    expect(came[2]).toMatch(/^\d\.\d\d m to spare$/);
  });

  it('names the field that cannot be read', () => {
    const verdict = markDesign({ 'focal-length': 'long', aperture: '4' }, variant, recordOf);
    expect(verdict).toMatchObject({
      kind: 'unreadable',
      troubles: { 'focal-length': expect.stringContaining('long') as string },
    });
  });

  it('is sound by its own trial where three lines can each be missed alone, and only there', () => {
    const long = {
      say: 'It is 45 mm or longer.',
      formula: 'equivalence',
      given: { format: '36x24', 'to-format': '36x24', 'focal-length': '{focal-length}' },
      result: 'equivalent-focal-length',
      atLeast: '45 mm',
    };
    const three = {
      ...template,
      requirements: [...template.requirements, long],
      nearMiss: [
        { 'focal-length': '85 mm', aperture: 'f/8' },
        { 'focal-length': '50 mm', aperture: 'f/1.4' },
        { 'focal-length': '40 mm', aperture: 'f/4' },
      ],
    } as const satisfies Template;
    expect(complaintsOf(three, recordOf, 0)).toEqual([]);
    const slack = {
      ...three,
      requirements: [...template.requirements, { ...long, atLeast: '20 mm' }],
    };
    expect(complaintsOf(slack, recordOf, 0).join()).toContain('miss 2 of the requirements');
    expect(complaintsOf(template, recordOf, 0).join()).toContain('miss 1 of the requirements');
  });
});

describe('a practical brief', () => {
  const template = {
    ...common,
    id: 'walk-the-light',
    kind: 'practical',
    formula: 'falloff',
    given: {},
    vary: {},
    text: 'Meter at two distances.',
    solution: 'Compare.',
    measured: ['near', 'far'],
    compare: 'stops',
    gap: 'Walls give some back.',
    rubric: [{ text: 'Both distances are from the lamp.', points: 1 }],
  } as const satisfies Template;

  it('sets readings against the formula', () => {
    // From 1 to 2 m: two stops; the reader’s meter said 1.7.
    const gap = gapOf({ near: '1 m', far: '2 m', stops: '-1.7' }, template, recordOf('falloff'));
    if (gap.kind !== 'compared') throw new Error(JSON.stringify(gap));
    expect(Math.abs(gap.computed)).toBeCloseTo(2, 12);
    expect(gap.inStops).toBe(true);
  });

  it('names the reading that cannot be read', () => {
    expect(
      gapOf({ near: '1 m', far: 'off', stops: '-1.7' }, template, recordOf('falloff')),
    ).toMatchObject({
      kind: 'unreadable',
      troubles: { far: expect.stringContaining('off') as string },
    });
  });
});
