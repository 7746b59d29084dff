import { expect } from 'vitest';
import type { Handle } from '~/drawing/handle.ts';
import type { Given, Results, Formula } from '~/formula/record.ts';
import { compute } from '~/formula/compute.ts';
import type { Style } from '~/formula/show.ts';
import { sheetOf, valuesOf, type Draw } from './sheets.ts';

type Handles = (given: Given, results: Results, style: Style) => readonly Handle[];

/** The handles of a plate as a reader finds it, or with some of its fields typed otherwise. */
export const handlesOf = (
  formula: Formula,
  handles: Handles,
  typed: Readonly<Record<string, string>> = {},
): ReadonlyMap<string, Handle> => {
  const given = valuesOf(formula, typed);
  return new Map(handles(given, compute(formula, given), {}).map((one) => [one.id, one]));
};

/** What a handle is named on this sheet; a test that asks for another has a mistake. */
export const handle = (all: ReadonlyMap<string, Handle>, id: string): Handle => {
  const found = all.get(id);
  if (!found) throw new Error(`There is no handle ${id}, but ${[...all.keys()].join(', ')}.`);
  return found;
};

/** Every handle lies on the sheet with room for a finger, and set down where it is changes nothing. */
export const staysPut = (
  formula: Formula,
  draw: Draw,
  handles: Handles,
  typed: Readonly<Record<string, string>> = {},
): void => {
  const given = valuesOf(formula, typed);
  const { sheet } = sheetOf(formula, draw, typed);
  const all = handles(given, compute(formula, given), {});
  expect(all.length).toBeGreaterThan(1);
  expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
  for (const one of all) {
    expect(one.x >= 0 && one.x <= sheet.width && one.y >= 0 && one.y <= sheet.height, one.id).toBe(
      true,
    );
    expect(one.says).toMatch(/\d/);
    expect(one.now >= one.ends[0] && one.now <= one.ends[1], one.id).toBe(true);
    for (const [key, value] of Object.entries(one.set(one.x, one.y))) {
      const now = given[key];
      const pairs = Array.isArray(value)
        ? value.map((x: number, i) => [x, (now as readonly number[])[i] ?? Number.NaN] as const)
        : [[value as number, now as number] as const];
      for (const [set, was] of pairs)
        expect(Math.abs(set - was), `${one.id} ${key}`).toBeLessThan(1e-9);
    }
  }
};
