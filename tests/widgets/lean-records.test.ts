import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript-eslint';
import { afterAll, describe, expect, it } from 'vitest';
import { compute } from '../../src/formula/compute.ts';
import { complete } from '../../src/formula/read.ts';
import type { Formula } from '../../src/formula/record.ts';
import { formulas } from '../../src/formulas.ts';
import { lean } from '../../src/site/lean-records.ts';
import { startsOf } from '../../src/formula/starts.ts';
import { textOf } from '../support/content.ts';
import { filesUnder, root } from '../support/files.ts';

const folder = mkdtempSync(join(tmpdir(), 'lean-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The build's own parser gives each node a start and an end; this one gives a range. */
const parse = (text: string): unknown =>
  JSON.parse(JSON.stringify(ts.parser.parseForESLint(text).ast), (_key, node: unknown) => {
    if (typeof node !== 'object' || node === null || !('range' in node)) return node;
    const [start, end] = node.range as [number, number];
    return { ...node, start, end };
  });
const leanOf = (code: string): string => lean(code, parse);

/** The record as a plate gets it, loaded from a file of its own. */
async function leanRecord(id: string): Promise<{ formula: Formula; code: string }> {
  const file =
    filesUnder('src').find(
      (one) => one.endsWith(`/${id}.ts`) && /^src\/(optics|sitting)\//.test(one),
    ) ?? '';
  const here = pathToFileURL(join(root, file));
  const code = leanOf(textOf(file));
  const copy = join(folder, `${id}.ts`);
  writeFileSync(
    copy,
    code.replaceAll(
      /from '(\.[^']+)'/g,
      (_all, path: string) => `from '${new URL(path, here).pathname}'`,
    ),
  );
  return {
    formula: ((await import(/* @vite-ignore */ copy)) as { default: Formula }).default,
    code,
  };
}

describe('a record as it is sent to plates', () => {
  it.each(Object.keys(formulas))(
    'computes, asks and shows as the whole one does: %s',
    async (id) => {
      const whole = (await formulas[id]?.())?.default;
      const { formula, code } = await leanRecord(id);
      if (!whole) throw new Error(`There is no formula ${id}.`);
      const given = complete(whole, startsOf(whole));
      expect(compute(formula, complete(formula, startsOf(formula)))).toEqual(compute(whole, given));
      const results = compute(whole, given);
      expect(formula.worked.values(given, results)).toEqual(whole.worked.values(given, results));
      for (const [key, input] of Object.entries(whole.inputs))
        expect(formula.inputs[key]).toMatchObject({ name: input.name, start: input.start });
      for (const words of [whole.model, whole.breaks, whole.spoken])
        expect(code).not.toContain(words);
      expect(code).not.toContain('start(');
    },
  );

  it('loses data by name only, never a function, and not what is named alike elsewhere', () => {
    const code = `export default { tex: 'f', f: (tex) => ({ means: tex }), model() { return 1; }, sources: ['a', 'b'], start: start('focal-length'), means: say('x') };`;
    expect(leanOf(code)).toBe(
      `export default {  f: (tex) => ({ means: tex }), model() { return 1; },  start: 85, means: say('x') };`,
    );
  });
});
