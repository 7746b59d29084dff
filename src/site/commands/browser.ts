import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext } from 'playwright-core';
import { program } from './run.ts';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const howToGetOne = `No Chromium was found. Do one of these and try again:
  npx playwright-core install chromium
  sudo apt-get install --yes chromium      (Debian and its kin)
or set CHROMIUM_PATH to one that you have.`;

/** Where a Chromium may be looked for; a test hands in its own. */
export interface Surroundings {
  readonly env: NodeJS.ProcessEnv;
  readonly isRoot: boolean;
  /** Whether a file is a browser that starts. */
  works(path: string): boolean;
  /** Where Playwright keeps, or would keep, its own browser. */
  playwrightPath(): string;
  /** Fetches Playwright's browser; the time limit is in milliseconds. */
  download(limit: number): void;
  /** Installs Debian's package. */
  installPackage(): void;
}

/**
 * Finds a Chromium: CHROMIUM_PATH, then the PATH, then Playwright's cache, then its download, then
 * Debian's package, the last only as root with CI set, since nobody's own machine should be changed unasked.
 * Throws: Error that prints the two commands to run when none is found.
 */
export function findChromium(where: Surroundings = thisMachine): string {
  const given = where.env['CHROMIUM_PATH'];
  if (given !== undefined && given !== '') {
    if (where.works(given)) return given;
    throw new Error(`CHROMIUM_PATH is "${given}", which does not start as a browser.`);
  }
  const onPath = (): string | undefined =>
    (where.env['PATH'] ?? '')
      .split(delimiter)
      .filter((folder) => folder !== '')
      .flatMap((folder) => names.map((name) => join(folder, name)))
      .find((path) => where.works(path));
  const cached = (): string | undefined =>
    where.works(where.playwrightPath()) ? where.playwrightPath() : undefined;

  const here = onPath() ?? cached();
  if (here !== undefined) return here;
  where.download(180_000);
  const fetched = cached();
  if (fetched !== undefined) return fetched;
  if (where.isRoot && (where.env['CI'] ?? '') !== '') {
    where.installPackage();
    const installed = onPath();
    if (installed !== undefined) return installed;
  }
  throw new Error(howToGetOne);
}

const thisMachine: Surroundings = {
  env: process.env,
  isRoot: process.getuid?.() === 0,
  works: (path) =>
    existsSync(path) && spawnSync(path, ['--version'], { timeout: 30_000 }).status === 0,
  playwrightPath: () => {
    try {
      return chromium.executablePath();
    } catch {
      // Playwright throws where it has no browser for this system.
      return '';
    }
  },
  download: (limit) => {
    console.error('Fetching a Chromium for the tests (three minutes at most) ...');
    spawnSync(process.execPath, [program('playwright-core'), 'install', 'chromium'], {
      timeout: limit,
      stdio: 'ignore',
    });
  },
  installPackage: () => {
    console.error("Installing Debian's Chromium ...");
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update'], { env, stdio: 'ignore', timeout: 300_000 });
    spawnSync('apt-get', ['install', '--yes', '--no-install-recommends', 'chromium'], {
      env,
      stdio: 'ignore',
      timeout: 600_000,
    });
  },
};

const quietly = {
  headless: true,
  args: [
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-default-apps',
    '--disable-domain-reliability',
    '--disable-sync',
    '--no-first-run',
    '--no-pings',
    '--force-color-profile=srgb',
    '--font-render-hinting=none',
    // Chromium refuses to run sandboxed as root; it loads our own pages only.
    ...(thisMachine.isRoot ? ['--no-sandbox'] : []),
  ],
};

/** Starts Chromium without a window and without anything it would fetch for itself; `more` are arguments of its own. */
export const startChromium = (
  executablePath: string = findChromium(),
  more: readonly string[] = [],
): Promise<Browser> =>
  chromium.launch({ executablePath, ...quietly, args: [...quietly.args, ...more] });

/** The same with a profile of its own, gone when it is closed: pages elsewhere are private, and those cannot be installed. */
export const startOwnChromium = (
  executablePath: string = findChromium(),
): Promise<BrowserContext> => chromium.launchPersistentContext('', { executablePath, ...quietly });
