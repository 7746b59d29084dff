import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { everything } from '../../src/site/everything.ts';
import { kit as kept } from '../../src/site/kit.ts';
import { BEGINS, kitOf, MOST_LENSES } from '../../src/sitting/kit.ts';
import { formulas } from '../../src/formulas.ts';
import { idOf } from '../../src/formula/record.ts';
import { root } from '../support/files.ts';

const golden = (name: string): Record<string, unknown> =>
  (
    JSON.parse(readFileSync(join(root, 'tests/golden', `${name}.json`), 'utf8')) as {
      kept: Record<string, unknown>;
    }
  ).kept;

describe('a kit from outside', () => {
  it('of the first version is taken whole', () => {
    const old = golden('kit-v1')['sbn:kit:v1'];
    expect(kitOf(old)).toEqual(old);
  });

  it('leaves behind what it does not know', () => {
    expect(
      kitOf({
        lenses: [{ 'focal-length': '50 mm', colour: 'red' }],
        camera: 'mine',
        format: '36x24',
      }),
    ).toEqual({ lenses: [{ 'focal-length': '50 mm' }], format: '36x24' });
  });

  it('needs no lenses, and may be one length alone', () => {
    expect(kitOf({ 'room-length': '4.2 m' })).toEqual({ lenses: [], 'room-length': '4.2 m' });
  });

  const lens = { 'focal-length': '50 mm', 'f-number': 'f/2' };
  it.each([
    undefined,
    null,
    'kit',
    7,
    [],
    {},
    { lenses: [] },
    { lenses: lens },
    { lenses: [lens, null] },
    { lenses: [{ 'f-number': 'f/2' }] },
    { lenses: [{ ...lens, 'focal-length': 50 }] },
    { lenses: [{ ...lens, 'focal-length': '-50 mm' }] },
    { lenses: [{ ...lens, 'focal-length': 'NaN mm' }] },
    { lenses: [{ ...lens, 'focal-length': '50 m' }] },
    { lenses: [{ ...lens, 'focal-length': `${'9'.repeat(400)} mm` }] },
    { lenses: [{ ...lens, 'f-number': 'f/0x10' }] },
    { lenses: [{ ...lens, 'f-number': 2 }] },
    { lenses: Array.from({ length: MOST_LENSES + 1 }, () => lens) },
    { format: '<img src=x onerror=alert(1)>' },
    { format: '3'.repeat(100) },
    { format: ['36x24'] },
    { 'room-length': '4.2 m\n' },
    { 'room-length': '4,2 m' },
    { 'room-length': { 0: '4.2 m' } },
    { lenses: [lens], system: 'ells' },
  ])('is refused where a value has another form: %j', (raw) => {
    expect(kitOf(raw)).toBeUndefined();
  });

  it('does not touch prototypes', () => {
    const raw: unknown = JSON.parse(
      '{"__proto__":{"format":"36x24"},"lenses":[],"ceiling":"2.4 m"}',
    );
    expect(kitOf(raw)).toEqual({ lenses: [], ceiling: '2.4 m' });
    expect(({} as Record<string, unknown>)['format']).toBeUndefined();
  });
});

it('names inputs that calculators have', async () => {
  const ids = new Set<string>();
  for (const load of Object.values(formulas))
    for (const input of Object.values((await load()).default.inputs)) ids.add(idOf(input));
  expect(BEGINS.filter((id) => !ids.has(id))).toEqual([]);
});

it('is among all that a file may bring back, and so is the day’s timetable', () => {
  // Each file holds what could be kept when it was made.
  const old = { ...golden('everything-v1'), ...golden('practice-and-work-v1') };
  const keys = everything.map(({ thing, version }) => `sbn:${thing}:v${version}`);
  expect(keys).toEqual(Object.keys(old));
  for (const { thing, version, accept } of everything) {
    const raw = old[`sbn:${thing}:v${version}`];
    expect(accept(raw), thing).toEqual(raw);
  }
  expect(kept.accept(golden('kit-v1')['sbn:kit:v1'])).toBeDefined();
});
