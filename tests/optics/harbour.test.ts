import { describe, expect, it } from 'vitest';
import harbourSet from '../../shared/tables/harbour-set.json' with { type: 'json' };
import { placeOfLight, start, startText } from '../../src/optics/harbour.ts';

describe('the harbour set', () => {
  it('gives its value for an input as a number in the unit it is written in', () => {
    const { starts } = harbourSet;
    expect(start('focal-length')).toBe(Number(starts['focal-length'].replace(' mm', '')));
    expect(start('f-number')).toBe(Number(starts['f-number'].replace('f/', '')));
    const [over, under] = starts.shutter.replace(' s', '').split('/').map(Number);
    expect(start('shutter')).toBe((over ?? NaN) / (under ?? NaN));
  });

  it('gives a choice by its id', () => {
    expect(startText('orientation')).toBe(harbourSet.starts.orientation);
  });

  it('names what it lacks, and what is no quantity', () => {
    expect(() => start('wand')).toThrow(/harbour-set\.json has no start for wand/);
    expect(() => start('orientation')).toThrow(/orientation is “portrait”, not a quantity/);
  });

  it('places the lights no calculator begins with', () => {
    for (const { id, value } of harbourSet.lights)
      expect(`${placeOfLight(id)} m`).toBe(value.replace(/\.?0+ m$/, ' m'));
    expect(() => placeOfLight('moon')).toThrow(/places no light by moon/);
  });
});
