import { describe, expect, it } from 'vitest';
import { PlateState } from '../../src/widgets/parts/plate-state.ts';
import { readQuery } from '../../src/widgets/parts/read-link.ts';
import { solutions } from '../../src/widgets/parts/ask.ts';
import { calculator } from './calculators.ts';

const plate = (id: string): PlateState => new PlateState(calculator(id));

describe('a field', () => {
  // The text, what it is echoed as, and the value in metres, for a subject distance on a metric page.
  it.each([
    ['2.5', '', 2.5],
    ['2,5', '', 2.5],
    ['2.50', '', 2.5],
    ['2.5 m', '', 2.5],
    ['2.5m', '', 2.5],
    ['150 cm', 'read as 1.5 m', 1.5],
    ['1 1/2', 'read as 1.5 m', 1.5],
    ['6ft 2in', 'read as 1.8796 m', 1.8796],
    ['١٫٥', 'read as 1.5 m', 1.5],
    ['1e1', '', 10],
    ['∞', '', Infinity],
    ['inf', 'read as infinity', Infinity],
  ])('reads %s, and says how only where that is news', (text, echo, value) => {
    const state = plate('angle-of-view');
    state.type('s', text);
    const field = state.field('s');
    expect(field.trouble).toBeUndefined();
    expect(field.text).toBe(text);
    expect(field.echo).toBe(echo);
    expect(field.value).toBeCloseTo(value, 12);
  });

  it.each([
    '',
    '.',
    ',',
    '-',
    '1e309',
    'NaN',
    '-2',
    '0',
    '2 kg',
    '1'.repeat(65),
    '<b>2</b>',
    '2 m 3 ft',
  ])('keeps %j as typed, says what is wrong, and computes nothing from it', (text) => {
    const state = plate('framing-distance');
    const before = state.results;
    state.type('H', text);
    expect(state.field('H').text).toBe(text);
    expect(state.field('H').trouble?.message).toMatch(/^(Frame height|That is too long)/);
    expect(state.results).toBe(before);
    expect(state.stale).toBe(true);
    state.type('H', '0.9');
    expect(state.stale).toBe(false);
    expect(state.field('H').trouble).toBeUndefined();
  });

  it('asks which of two readings is meant, and takes the one chosen', () => {
    const state = plate('angle-of-view');
    state.type('s', '3,145');
    expect(state.field('s').trouble?.readings).toEqual(['3.145 m', '3145 m']);
    state.choose('s', '3.145 m');
    expect(state.field('s').trouble).toBeUndefined();
    expect(state.field('s').value).toBe(3.145);
    expect(state.stale).toBe(false);
  });

  it('has the sentence of a clash set beside the input it names', () => {
    const state = plate('frame-size');
    state.type('s', '8 cm');
    expect(state.field('s').trouble?.message).toMatch(
      /farther away than the focal length of 85 mm/,
    );
    expect(state.field('f').trouble).toBeUndefined();
  });

  it('calls fields by their names where a group of them wants one', () => {
    const state = plate('circle-of-confusion');
    state.type('printHeight', '');
    expect(state.stale).toBe(true);
    expect(state.field('printHeight').trouble?.message).toBe(
      'This plate needs exactly one of: print height, or enlargement.',
    );
  });

  it('shows the lens offset only while distances are counted from the sensor, with what is assumed in it', () => {
    const state = plate('angle-of-view');
    expect(state.field('o').shown).toBe(false);
    state.type('from', 'sensor');
    expect(state.field('o').shown).toBe(true);
    expect(state.field('o').text).toBe('');
    // f(1 + m) with D = 2.21 m: m + 1/m = 2210/85 − 2 = 24, 1/m = (24 + √572)/2 = 23.958, so 85 · 1.04174 = 88.55 mm
    expect(state.field('o').placeholder).toBe('88.55');
    state.type('o', 'nonsense');
    expect(state.stale).toBe(true);
    state.type('from', 'lens');
    expect(state.stale).toBe(false);
  });

  it('answers in the decimal mark that was typed', () => {
    const state = plate('framing-distance');
    state.type('H', '0,8');
    expect(state.sentence().find(({ main }) => main)?.text).toBe('1,97 m');
    state.type('H', '0.8');
    expect(state.sentence().find(({ main }) => main)?.text).toBe('1.97 m');
    state.type('H', '0,8 feet high');
    expect(state.style.decimal).toBe('point');
  });

  it.each([
    ['3,145', '3.145 m', 'comma'],
    ['3,145', '3145 m', 'point'],
    ['3.145', '3.145 m', 'point'],
    ['3.145', '3145 m', 'comma'],
  ])('takes %s for %s to say which mark is the decimal one: %s', (typed, reading, mark) => {
    const state = plate('angle-of-view');
    state.type('s', typed);
    state.choose('s', reading);
    expect(state.style.decimal).toBe(mark);
  });
});

describe('metric and imperial', () => {
  it('writes lengths anew and changes no result; focal lengths stay in millimetres', () => {
    const state = plate('frame-size');
    const before = state.results;
    state.measure('imperial');
    expect(state.field('s').text).toBe('7.25');
    expect(state.field('s').unit).toBe('ft');
    expect(state.field('f').text).toBe('85');
    expect(state.field('f').unit).toBe('mm');
    expect(state.results).toEqual(before);
    state.measure('metric');
    expect(state.field('s').text).toBe('2.21');
  });

  it('takes a bare number in the unit shown', () => {
    const state = plate('frame-size');
    state.measure('imperial');
    state.type('s', '10');
    expect(state.field('s').value).toBeCloseTo(3.048, 12);
  });

  it('leaves a field that cannot be used as it was typed', () => {
    const state = plate('frame-size');
    state.type('s', 'two metres');
    state.measure('imperial');
    expect(state.field('s').text).toBe('two metres');
    expect(state.field('f').text).toBe('85');
  });
});

describe('the whole plate', () => {
  it('returns to its start, in the reader’s own units', () => {
    const state = plate('room-fit');
    const [start, query] = [state.results, state.query()];
    state.type('roomLength', '4.2');
    state.type('orientation', 'landscape');
    state.reset();
    expect(state.results).toEqual(start);
    expect(state.query()).toBe(query);
  });

  it('takes a written-out size and shape', () => {
    const state = plate('framing-distance');
    state.type('format', '30x20mm');
    // 85 · (1 + 900/30) = 2635 mm
    expect(state.results['s']).toBeCloseTo(2.635, 12);
    state.type('aspect', '4:5');
    // 20 mm across allows 25 mm up: 85 · (1 + 900/25) = 3145 mm
    expect(state.results['s']).toBeCloseTo(3.145, 12);
    expect(state.query()).toBe(
      'format=30x20mm&orientation=portrait&print-aspect=4:5&focal-length=85mm&frame-height=0.9m',
    );
  });

  it('writes a link that brings back the same state', () => {
    const state = plate('backdrop-coverage');
    state.type('c', '4ft 1in');
    state.type('margin', '1/8');
    state.type('width', '');
    const loaded = readQuery(state.calculator.formula, state.query());
    const other = plate('backdrop-coverage');
    if (loaded) other.load(loaded);
    expect(other.notice).toBe('');
    expect(other.query()).toBe(state.query());
    for (const [key, value] of Object.entries(state.results)) {
      if (typeof value === 'number') expect(other.results[key], key).toBeCloseTo(value, 12);
      else expect(other.results[key], key).toBe(value);
    }
  });

  it('answers what input gives a result, in the unit shown', () => {
    const state = plate('backdrop-coverage');
    // 24 mm · 3.71 m / (f · 2.21/(2.21 − f)) = 1.2 m: f/(1 − f/2.21) = 74.2 mm, f = 71.79 mm
    const [f] = solutions(state, { input: 'f', result: 'viewWidth', value: '1.2' });
    expect(f).toBeCloseTo(0.0742 / (1 + 0.0742 / 2.21), 9);
    expect(() => solutions(state, { input: 'f', result: 'viewWidth', value: 'wide' })).toThrow(
      /View width must be/,
    );
    expect(() => solutions(state, { input: 'f', result: 'viewWidth', value: '-1' })).toThrow(
      /can be reached/,
    );
  });
});

describe('numbers written as elsewhere on the page', () => {
  it('writes anew what the page wrote, and keeps what was typed', () => {
    const state = plate('framing-distance');
    state.type('f', '85.0');
    expect(state.adopt({ system: 'metric', decimal: 'comma' })).toBe(true);
    expect(state.field('H').text).toBe('0,9');
    expect(state.field('f').text).toBe('85.0');
    // 85 · (1 + 900/36) = 2210 mm
    expect(state.sentence().find(({ main }) => main)?.text).toBe('2,21 m');
    expect(state.adopt({ system: 'metric', decimal: 'comma' })).toBe(false);
  });

  it('answers a comma with commas in every field of the plate, and loses no digit by it', () => {
    const state = plate('backdrop-coverage');
    state.put('c', 2.2104);
    state.type('b', '1,5');
    expect(state.field('c').text).toBe('2,2104');
    expect(state.field('b').text).toBe('1,5');
    expect(state.given['c']).toBe(2.2104);
    state.type('b', '1.5');
    expect(state.field('c').text).toBe('2.2104');
  });

  it('turns typed lengths to the other units, and leaves what cannot be read', () => {
    const state = plate('frame-size');
    state.type('s', '2.21');
    state.adopt({ system: 'imperial', decimal: 'point' });
    expect(state.field('s').text).toBe('7.25');
    state.type('s', 'two');
    state.adopt({ system: 'metric', decimal: 'comma' });
    expect(state.field('s').text).toBe('two');
  });
});
