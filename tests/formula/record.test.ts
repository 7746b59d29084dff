import { describe, expect, it } from 'vitest';
import { idOf } from '../../src/formula/record.ts';

describe('the id of an input or a result', () => {
  it.each([
    ['Focal Length', 'focal-length'],
    ['f-number', 'f-number'],
    ['child’s offset', 'child-s-offset'],
    ['parents’ reach', 'parents-reach'],
  ])('is its name in kebab-case: %s is %s', (name, id) => {
    expect(idOf({ name })).toBe(id);
  });
});
