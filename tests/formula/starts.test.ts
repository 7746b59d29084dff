import { describe, expect, it } from 'vitest';
import { rivalsOf, startsOf } from '../../src/formula/starts.ts';
import { recordOf } from '../support/records.ts';

describe('inputs that stand in for one another', () => {
  const movement = recordOf('movement-blur');

  it('give way to each other, a whole group at a time, and to nothing else', () => {
    expect(rivalsOf(movement, 'magnification')).toEqual(['focal-length', 'subject-distance']);
    expect(rivalsOf(movement, 'focal-length')).toEqual(['magnification']);
    expect(rivalsOf(movement, 'flash-t05')).toEqual(['flash-t01']);
    expect(rivalsOf(movement, 'speed')).toEqual([]);
    expect(rivalsOf(recordOf('perspective'), 'depth')).toEqual([]);
  });

  it('are on a page at first in their first way only', () => {
    const starts = startsOf(movement);
    expect(starts).toHaveProperty('m');
    expect(starts).toHaveProperty('t01');
    for (const key of ['f', 's', 't05']) expect(starts).not.toHaveProperty(key);
  });
});
