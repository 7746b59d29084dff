import { describe, expect, it } from 'vitest';
import depthOfField from '../../src/optics/aperture/depth-of-field.ts';
import exposureValue from '../../src/optics/aperture/exposure-value.ts';
import backgroundBlur from '../../src/optics/aperture/background-blur.ts';
import roomFit from '../../src/optics/lens/room-fit.ts';
import framingDistance from '../../src/optics/lens/framing-distance.ts';
import falloff from '../../src/optics/light/falloff.ts';
import lightingRatio from '../../src/optics/light/lighting-ratio.ts';
import softness from '../../src/optics/light/softness.ts';
import printSize from '../../src/sitting/print/print-size.ts';
import type { Formula } from '../../src/formula/record.ts';
import { assign } from '../../src/search/assign.ts';
import { partQuery } from '../../src/search/quantities.ts';

describe('the quantities in a question', () => {
  it.each([
    ['85mm f4 2.2 m depth of field', 'depth of field', ['85mm', 'f4', '2.2 m']],
    ['depth of field 2,2m at F/2,8', 'depth of field at', ['2,2m', 'F/2,8']],
    ['framing distance 50mm', 'framing distance', ['50mm']],
    ['6\'2" away', 'away', ['6\'2"']],
    ['7 ft 3 in', '', ['7 ft 3 in']],
    ['1/200 s ISO 400', '', ['1/200 s', 'ISO 400']],
    ['iso400 1/125', '', ['iso400', '1/125']],
    ['gel 3200 K minus', 'gel minus', ['3200 K']],
    ['20 x 30 cm print', 'print', ['20 cm', '30 cm']],
    ['36x24 sensor', '36x24 sensor', []],
    ['4x5in film', '4x5in film', []],
    ['three lights', 'three lights', []],
    ['t0.5', 't0.5', []],
    ['f-stop', 'f-stop', []],
    ['f', 'f', []],
  ])('of “%s” are told from its words', (query, words, typed) => {
    const parts = partQuery(query);
    expect(parts.words).toBe(words);
    expect(parts.typed.map(({ text }) => text)).toEqual(typed);
  });

  it('that is nothing else are called by their names', () => {
    expect(partQuery('f/4 1/200 iso 400').names).toBe('f-number shutter time iso');
  });
});

/** What a formula takes of a question: values in SI by name, and what is left. */
const taken = (formula: Formula, query: string): Record<string, unknown> => {
  const { words, typed } = partQuery(query);
  const { values, left, refusal } = assign(formula, words, typed);
  return {
    ...(Object.fromEntries(
      values.map(([key, value]) => [formula.inputs[key]?.name, value]),
    ) as Record<string, unknown>),
    ...(left.length > 0 && { left }),
    ...(refusal !== undefined && { refusal }),
  };
};

describe('a formula takes', () => {
  it.each<[string, Formula, string, Record<string, unknown>]>([
    ['a lens, an f-number and a distance', depthOfField, '85mm f4 2.2 m', { 'focal length': 0.085, 'f-number': 4, 'subject distance': 2.2 }],
    ['them in any order, with a decimal comma', depthOfField, '2,2m F/2,8 85 mm', { 'subject distance': 2.2, 'f-number': 2.8, 'focal length': 0.085 }],
    ['feet and inches', depthOfField, '6 ft 2 in', { 'subject distance': 6 * 0.3048 + 2 * 0.0254 }],
    ['several f-numbers where there is room for them', depthOfField, 'f2.8 f4 f8', { 'f-number': 2.8, 'second f-number': 4, 'third f-number': 8 }],
    ['a frame where the distance is the answer', framingDistance, '50mm 0.9 m upright', { orientation: 'portrait', 'focal length': 0.05, 'frame height': 0.9 }],
    ['time and ISO', exposureValue, 'f4 1/200 iso 400', { 'f-number': 4, shutter: 1 / 200, ISO: 400 }],
    ['two distances, the nearer named first', falloff, '1 m 2 m', { near: 1, far: 2 }],
    ['two readings', lightingRatio, 'f8 f5.6', { key: 8, fill: 5.6 }],
    ['a length by its name, not by its place', backgroundBlur, 'backdrop distance 1.5 m 85mm', { 'backdrop distance': 1.5, 'focal length': 0.085 }],
    ['a size and a distance', softness, '60 cm 1.5 m', { 'source width': 0.6, distance: 1.5 }],
    ['both sides of a print', printSize, '20 x 30 cm', { 'print width': 0.2, 'print height': 0.3 }],
    ['a length by the first word of its name', roomFit, 'longest lens room 4.2 m frame 90 cm', { 'room length': 4.2, 'frame height': 0.9 }],
    ['a named length though a nameless one comes first', backgroundBlur, '2 m backdrop 1.5 m', { 'subject distance': 2, 'backdrop distance': 1.5 }],
    ['nothing it has no place for', framingDistance, 'f/4 85mm 400 lx', { 'focal length': 0.085, left: ['f/4', '400 lx'] }],
    ['no third distance that could be anything', falloff, '1 m 2 m 3 m 4 W', { near: 1, far: 2, left: ['3 m', '4 W'] }],
  ])('%s', (_name, formula, query, expected) => {
    const found = taken(formula, query);
    expect(Object.keys(found).toSorted()).toEqual(Object.keys(expected).toSorted());
    for (const [name, value] of Object.entries(expected))
      if (typeof value === 'number') expect(found).toHaveProperty([name], expect.closeTo(value, 12));
      else expect(found).toHaveProperty([name], value);
  }); // prettier-ignore

  it('nothing out of range, and says what is allowed', () => {
    expect(taken(depthOfField, 'f/0.1')).toEqual({
      left: ['f/0.1'],
      refusal: expect.stringMatching(/^F-number must be between .* you typed f\/0\.1\.$/) as string,
    });
  });

  it('nothing with two readings, and shows both', () => {
    expect(taken(depthOfField, '1,250 m')).toEqual({
      left: ['1,250 m'],
      refusal: '“1,250 m” could be 1.25 m or 1250 m. Write it as one of these.',
    });
  });
});
