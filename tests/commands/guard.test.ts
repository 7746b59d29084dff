import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';

const path = '../../src/site/guard.cjs';
const guard = createRequire(import.meta.url)(path) as {
  isOldEnoughToFail(version: string): boolean;
  message(version: string): string;
};

describe('the guard before every script', () => {
  it.each([
    ['v0.12.18', true],
    ['v20.20.2', true],
    ['v23.11.1', true],
    ['v24.0.0', false],
    ['v26.3.0', false],
    ['v100.0.0', false],
    ['nonsense', true],
  ])('%s is refused: %s', (version, refused) => {
    expect(guard.isOldEnoughToFail(version)).toBe(refused);
  });

  it('says what is needed, what was found and what to do', () => {
    expect(guard.message('v20.1.0')).toMatch(/needs Node 24 or later, found v20\.1\.0; do: npm ci/);
  });

  it('is written in syntax that an old Node can read', () => {
    const source = readFileSync(new URL(path, import.meta.url), 'utf8');
    expect(source).not.toMatch(/=>|`|\b(const|let|class|import|async)\b|\?\.|\?\?/);
  });

  it('runs first in every script', () => {
    const manifest = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
    const { scripts } = JSON.parse(manifest) as { scripts: Record<string, string> };
    expect(Object.keys(scripts).length).toBeGreaterThan(9);
    for (const script of Object.values(scripts)) {
      expect(script).toMatch(/^node src\/site\/guard\.cjs && /);
    }
  });
});
