import { describe, expect, it } from 'vitest';
import { findChromium } from '../../src/site/commands/browser.ts';
import type { Surroundings } from '../../src/site/commands/browser.ts';

/** A machine on which only the listed files are browsers; what is fetched or installed joins them. */
function machine(
  given: Partial<Surroundings> & { browsers?: string[]; fetches?: string; installs?: string },
): Surroundings & { done: string[] } {
  const browsers = new Set(given.browsers);
  const done: string[] = [];
  return {
    done,
    env: { PATH: '/usr/local/bin:/usr/bin' },
    isRoot: false,
    works: (path) => browsers.has(path),
    playwrightPath: () => '/cache/chrome',
    download: (limit) => {
      done.push(`download ${limit}`);
      if (given.fetches !== undefined) browsers.add(given.fetches);
    },
    installPackage: () => {
      done.push('install');
      if (given.installs !== undefined) browsers.add(given.installs);
    },
    ...given,
  };
}

const rootInCi = { isRoot: true, env: { PATH: '/usr/bin', CI: 'true' } };

describe('finding Chromium', () => {
  it('takes CHROMIUM_PATH before all else', () => {
    const where = machine({
      env: { CHROMIUM_PATH: '/mine', PATH: '/usr/bin' },
      browsers: ['/mine', '/usr/bin/chromium'],
    });
    expect(findChromium(where)).toBe('/mine');
  });

  it('says so when CHROMIUM_PATH is no browser, rather than taking another', () => {
    const where = machine({
      env: { CHROMIUM_PATH: '/mine', PATH: '/usr/bin' },
      browsers: ['/usr/bin/chromium'],
    });
    expect(() => findChromium(where)).toThrow(/CHROMIUM_PATH is "\/mine"/);
  });

  it('looks along the PATH, then in the cache, and fetches nothing if it finds one', () => {
    const both = machine({ browsers: ['/usr/bin/chromium', '/cache/chrome'] });
    expect(findChromium(both)).toBe('/usr/bin/chromium');
    const cache = machine({ browsers: ['/cache/chrome'] });
    expect(findChromium(cache)).toBe('/cache/chrome');
    expect([...both.done, ...cache.done]).toEqual([]);
  });

  it('fetches one within three minutes', () => {
    const where = machine({ fetches: '/cache/chrome' });
    expect(findChromium(where)).toBe('/cache/chrome');
    expect(where.done).toEqual(['download 180000']);
  });

  it("installs Debian's package only as root in CI", () => {
    const where = machine({ ...rootInCi, installs: '/usr/bin/chromium' });
    expect(findChromium(where)).toBe('/usr/bin/chromium');
    expect(where.done).toEqual(['download 180000', 'install']);
  });

  it.each([
    ['not root', { ...rootInCi, isRoot: false }],
    ['no CI', { isRoot: true }],
  ])('leaves the machine alone (%s) and prints two commands', (_, given) => {
    const where = machine({ ...given, installs: '/usr/bin/chromium' });
    expect(() => findChromium(where)).toThrow(
      /npx playwright-core install chromium[^]*apt-get install --yes chromium/,
    );
    expect(where.done).not.toContain('install');
  });
});
