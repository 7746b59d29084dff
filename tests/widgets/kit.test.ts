import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compute } from '../../src/formula/compute.ts';
import { complete, writeInput } from '../../src/formula/read.ts';
import { idOf, isChoice } from '../../src/formula/record.ts';
import { startsOf } from '../../src/formula/starts.ts';
import { factorOf } from '../../src/formula/units.ts';
import { kitOf, LENGTHS, type Kit } from '../../src/sitting/kit.ts';
import {
  fieldText,
  lengths,
  readKit,
  textsOf,
  type KitTexts,
} from '../../src/widgets/kit/texts.ts';
import { startsWith } from '../../src/widgets/parts/kit-starts.ts';
import { PlateState } from '../../src/widgets/parts/plate-state.ts';
import { calculator, calculators } from './calculators.ts';

const mm = (width: number, height: number): object => ({
  width: width * 0.001,
  height: height * 0.001,
});
const formula = (id: string) => calculator(id).formula;
const mine: Kit = {
  format: '23.6x15.8',
  lenses: [
    { 'focal-length': '35 mm', 'f-number': 'f/1.4' },
    { 'focal-length': '56 mm', 'f-number': 'f/5.6' },
  ],
  'room-length': '4.2 m',
  'room-width': '3.1 m',
  ceiling: '2.4 m',
  'backdrop-width': '2 m',
  'backdrop-height': '2.2 m',
};
/** What a kit sets on a plate, by id, in the record's own unit. */
const sets = (id: string, kit: Kit): Record<string, unknown> => {
  const { inputs } = formula(id);
  const { starts, took } = startsWith(formula(id), kit);
  return Object.fromEntries(
    took.map((key) => {
      const input = inputs[key];
      if (!input) throw new Error(`${id} has no ${key}.`);
      const value = starts[key];
      return [
        idOf(input),
        isChoice(input)
          ? value
          : Number(((value as number) / factorOf(input.unit)).toPrecision(12)),
      ];
    }),
  );
};

describe('what a plate starts from', () => {
  it('is the kit’s format, room and backdrop', () => {
    expect(sets('room-fit', mine)).toEqual({
      format: mm(23.6, 15.8),
      'focal-length': 56,
      'room-length': 4.2,
      'room-width': 3.1,
      ceiling: 2.4,
    });
    expect(sets('backdrop-coverage', mine)).toMatchObject({
      'backdrop-width': 2,
      'backdrop-height': 2.2,
    });
    expect(sets('room-fill', mine)).toEqual({
      'room-length': 4.2,
      'room-width': 3.1,
      ceiling: 2.4,
    });
  });

  // The record's own is 85 mm. 85/50 = 1.70 and 135/85 = 1.59: the longer is nearer, though 50 is only 35 mm away.
  it.each([
    [[85, 100], 85],
    [[50, 135], 135],
    [[50, 145], 50], // 145/85 = 1.706
    [[24], 24],
    [[100, 70], 100], // 100/85 = 1.18, 85/70 = 1.21
  ])('of lenses of %j mm is the %d mm', (owned, taken) => {
    const kit = { lenses: owned.map((f) => ({ 'focal-length': `${f} mm` })) };
    expect(sets('framing-distance', kit)).toEqual({ 'focal-length': taken });
  });

  it('keeps the plate’s apertures but for those the lens does not open to', () => {
    const at = (widest: string): Record<string, unknown> =>
      sets('depth-of-field', { lenses: [{ 'focal-length': '85 mm', 'f-number': widest }] });
    expect(at('f/1.4')).toEqual({ 'focal-length': 85 });
    expect(at('f/4')).toEqual({ 'focal-length': 85 });
    expect(at('f/5')).toEqual({ 'focal-length': 85, 'f-number': 5 });
    // Of two lenses of one length the faster counts.
    expect(
      sets('exposure-value', {
        lenses: [
          { 'focal-length': '85 mm', 'f-number': 'f/8' },
          { 'focal-length': '85 mm', 'f-number': 'f/1.8' },
        ],
      }),
    ).toEqual({});
    // Where no focal length is asked for, the lens is the one another plate would take.
    expect(sets('exposure-value', mine)).toEqual({ 'f-number': 5.6 });
    expect(sets('flash-exposure', mine)).toEqual({ 'wanted-f-number': 5.6 });
  });

  it('leaves alone what a meter reads, what a plate compares with, and what it begins without', () => {
    expect(sets('lighting-ratio', mine)).toEqual({});
    expect(sets('f-stop', mine)).toEqual({ 'focal-length': 56 });
    for (const [, { formula }] of calculators) {
      const own = startsOf(formula);
      const { took } = startsWith(formula, mine);
      expect(took.filter((key) => own[key] === undefined)).toEqual([]);
    }
  });

  it('does not compare a format with itself', () => {
    const { inputs } = formula('equivalence');
    const to = (kit: Kit): string => {
      const { starts } = startsWith(formula('equivalence'), kit);
      const [key, input] =
        Object.entries(inputs).find(([, one]) => idOf(one) === 'to-format') ?? [];
      return key && input ? writeInput(input, starts[key]) : '';
    };
    expect(to(mine)).toBe('36x24');
    expect(to({ ...mine, format: '17.3x13' })).toBe('23.6x15.8');
  });

  it('gives a value that cannot be used way to the start, and says so', () => {
    const { starts, took, gaveWay } = startsWith(formula('framing-distance'), {
      format: 'constructor',
      lenses: [{ 'focal-length': '9000 mm' }],
    });
    expect(took).toEqual([]);
    expect(starts).toEqual(startsOf(formula('framing-distance')));
    expect(gaveWay).toBe(
      'Your kit’s format cannot be used here, and the plate’s own stands there. Your kit’s focal length cannot be used here, and the plate’s own stands there.',
    );
  });

  it('gives the whole kit way where its numbers do not go with the others, and says why', () => {
    // 2.21 m is nearer than a focal length of 2300 mm.
    const { starts, took, gaveWay } = startsWith(formula('frame-size'), {
      format: '44x33',
      lenses: [{ 'focal-length': '2300 mm' }],
    });
    expect(took).toEqual([]);
    expect(starts).toEqual(startsOf(formula('frame-size')));
    expect(gaveWay).toMatch(
      /^Your kit’s numbers do not go with this plate’s others: .*2300 mm.* It shows its own start\.$/,
    );
  });

  it('can be computed on every plate, whatever a kit holds', () => {
    const number = (low: number, high: number): fc.Arbitrary<number> =>
      fc
        .integer({ min: 0, max: 60 })
        .map((i) => Number((low * (high / low) ** (i / 60)).toPrecision(3)));
    const metres = fc.option(
      number(0.001, 5000).map((x) => `${x} m`),
      { nil: undefined },
    );
    const kits = fc.record({
      format: fc.constantFrom('36x24', '13.2x8.8', '4x5in', '30x20mm', '1x1000mm', 'nonsense'),
      lenses: fc.array(
        fc.record({
          'focal-length': number(0.1, 9000).map((x) => `${x} mm`),
          'f-number': number(0.1, 900).map((x) => `f/${x}`),
        }),
        { maxLength: 3 },
      ),
      ...Object.fromEntries(LENGTHS.map((id) => [id, metres])),
    });
    fc.assert(
      fc.property(kits, fc.constantFrom(...calculators), (raw, [, { formula }]) => {
        const kit = kitOf(JSON.parse(JSON.stringify(raw)));
        if (!kit) throw new Error('It was to be a kit.');
        const { starts, took, gaveWay } = startsWith(formula, kit);
        expect(() => compute(formula, complete(formula, starts))).not.toThrow();
        expect(gaveWay).not.toMatch(/undefined|NaN|\[object/);
        for (const key of took) expect(starts[key]).toBeDefined();
      }),
      { numRuns: 600 },
    );
  });

  it('is what Reset goes back to', () => {
    const state = new PlateState(calculator('framing-distance'));
    const { starts } = startsWith(formula('framing-distance'), mine);
    state.starts = starts;
    state.reset();
    expect(state.field('f').text).toBe('56');
    // 56 · (1 + 900/23.6) = 2192 mm
    expect(state.sentence().find(({ main }) => main)?.text).toBe('2.19 m');
    state.type('f', '35');
    state.reset();
    expect(state.field('f').text).toBe('56');
  });
});

const none: KitTexts = {
  format: '',
  lenses: [{ focal: '', widest: '' }],
  lengths: {
    'room-length': '',
    'room-width': '',
    ceiling: '',
    'backdrop-width': '',
    'backdrop-height': '',
  },
  system: '',
};

describe('the kit’s fields', () => {
  it('read what people type, and say how only where that is news', () => {
    const { kit, troubles, echoes } = readKit({
      ...none,
      format: '20 × 30 mm',
      lenses: [
        { focal: '85', widest: 'f/1,8' },
        { focal: '3,5cm', widest: '' },
        { focal: '', widest: '' },
      ],
      lengths: { ...none.lengths, 'room-length': '13\'9"', 'room-width': '3,10', ceiling: '2.4 m' },
      system: 'metric',
    });
    expect([...troubles]).toEqual([]);
    // 13 · 0.3048 + 9 · 0.0254 = 4.191
    expect(kit).toEqual({
      format: '30x20mm',
      lenses: [{ 'focal-length': '35 mm' }, { 'focal-length': '85 mm', 'f-number': 'f/1.8' }],
      'room-length': '4.191 m',
      'room-width': '3.1 m',
      ceiling: '2.4 m',
      system: 'metric',
    });
    expect(kitOf(JSON.parse(JSON.stringify(kit)))).toEqual(kit);
    expect([...echoes]).toEqual([
      ['lens-1-focal', 'read as 35 mm'],
      ['room-length', 'read as 4.191 m'],
    ]);
  });

  it('take a bare length in feet for an imperial reader', () => {
    const { kit } = readKit({
      ...none,
      lengths: { ...none.lengths, ceiling: '8' },
      system: 'imperial',
    });
    expect(kit?.ceiling).toBe('2.4384 m');
  });

  it.each([
    ['format', { format: '30x20' }, /“30x20” is no size of a frame/],
    [
      'lens-0-focal',
      { lenses: [{ focal: 'fifty', widest: '' }] },
      /^Focal length must be between 1 mm and 5000 mm/,
    ],
    ['lens-0-focal', { lenses: [{ focal: '1,200', widest: '' }] }, /could be 1.2 mm or 1200 mm/],
    ['lens-0-focal', { lenses: [{ focal: ' ', widest: '2' }] }, /^Which lens opens so wide\?/],
    [
      'lens-0-widest',
      { lenses: [{ focal: '50', widest: '0' }] },
      /^Widest aperture must be between f\/0.5 and f\/256/,
    ],
    [
      'ceiling',
      { lengths: { ...none.lengths, ceiling: '0.1' } },
      /^Ceiling must be between 0.5 m and 100 m/,
    ],
    ['room-length', { lengths: { ...none.lengths, 'room-length': '9'.repeat(99) } }, /too long/],
  ])('say beside %s what is wrong, and make no kit', (at, texts, says) => {
    const { kit, troubles } = readKit({ ...none, ...texts });
    expect(kit).toBeUndefined();
    expect([...troubles.keys()]).toEqual([at]);
    expect(troubles.get(at)).toMatch(says);
  });

  it('make no kit of nothing', () => {
    expect(readKit(none).kit).toBeUndefined();
    expect(readKit(none).troubles.size).toBe(0);
  });

  it('show a kept kit so that it reads back the same', () => {
    for (const decimal of ['point', 'comma'] as const) {
      const texts = textsOf({ ...mine, system: 'metric' }, decimal);
      expect(readKit(texts).kit).toEqual({ ...mine, system: 'metric' });
    }
    expect(fieldText('4.191 m', 'ft', 'comma')).toBe('13,75');
    expect(fieldText('f/1.8', 'f/', 'comma')).toBe('1,8');
  });

  it('let no length through that a calculator refuses', () => {
    for (const [, { formula }] of calculators)
      for (const input of Object.values(formula.inputs)) {
        const mine = LENGTHS.find((id) => id === idOf(input));
        if (!mine || isChoice(input)) continue;
        const [low, high] = input.range.map((x) => x * factorOf(input.unit));
        expect(lengths[mine].range[0], `${formula.id} ${mine}`).toBeGreaterThanOrEqual(low ?? 0);
        expect(lengths[mine].range[1], `${formula.id} ${mine}`).toBeLessThanOrEqual(high ?? 0);
      }
  });
});
