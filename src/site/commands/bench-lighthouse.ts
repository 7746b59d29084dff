import { createServer } from 'node:net';
import lighthouse from 'lighthouse';
import type { Flags, Result } from 'lighthouse';
import { fileFor } from './serve.ts';
import { built, median, phone, withSite } from './bench-phone.ts';
import type { Line, Sheet } from './bench-phone.ts';

/** One page of each type: what it is, and where it lies. */
export const pageTypes: readonly (readonly [type: string, path: string])[] = [
  ['home', ''],
  ['unit', 'focal-length/'],
  ['lesson, focal length', 'focal-length/framing-distance/'],
  ['lesson, aperture', 'aperture/depth-of-field/'],
  ['lesson, lighting', 'lighting/rim-light/'],
  ['lesson, sitting', 'the-sitting/safe-on-set/'],
  ['plate alone', 'plates/depth-of-field/'],
  ['plate alone, with pictures', 'plates/background-blur/'],
  ['plates', 'plates/'],
  ['quick tables', 'tables/'],
  ['a quick table', 'tables/framing-distance/'],
  ['your own table', 'tables/own/'],
  ['pocket card', 'tables/card/'],
  ['kit', 'kit/'],
  ['search', 'search/'],
  ['search, asked', 'search/?q=aperture'],
  ['check values', 'check-values/'],
  ['check values, a unit', 'check-values/lighting/'],
  ['checklists', 'checklists/'],
  ['a checklist', 'checklists/before-the-child/'],
  ['day plan', 'day-plan/'],
  ['glossary', 'glossary/'],
  ['about', 'about/'],
  ['safety', 'safety/'],
  ['practise', 'practise/'],
  ['assign', 'assign/'],
  ['plates by link', 'assign/plates/'],
  ['quick questions', 'assign/questions/'],
  ['a student’s work', 'work/'],
  ['marking desk', 'marking/'],
  ['not found', '404.html'],
];

/** What every page is to reach, in each category. */
export const LEAST = 0.98;
export const categories = ['performance', 'accessibility', 'best-practices'] as const;
type Category = (typeof categories)[number];
type Scores = Readonly<Record<Category, number>>;

/** A page's line: its scores, and whether all of them suffice; a score that is missing does not. */
export const scored = (type: string, scores: Partial<Scores>): Line => {
  const all = categories.map((name) => scores[name] ?? Number.NaN);
  return {
    pass: all.every((score) => score >= LEAST),
    text: [
      type.padEnd(28),
      ...categories.map((name, i) => `${name} ${(all[i] ?? Number.NaN).toFixed(2)}`),
      `least ${LEAST.toFixed(2)}`,
    ].join('  '),
  };
};

const round = (ms: number): number => Math.round(ms);

/** The contract's phone in Lighthouse's words; the network and the processor are slowed down by its own simulation. */
const settings: Flags = {
  logLevel: 'silent',
  output: 'json',
  formFactor: 'mobile',
  screenEmulation: {
    mobile: true,
    ...phone.screen,
    deviceScaleFactor: 2,
    disabled: false,
  },
  throttlingMethod: 'simulate',
  throttling: {
    rttMs: phone.latency,
    throughputKbps: round(phone.bitsPerSecond / 1000),
    cpuSlowdownMultiplier: phone.cpu,
  },
};

/** A port that is free now. */
const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => {
        if (address && typeof address === 'object') resolve(address.port);
        else reject(new Error('No port is free.'));
      });
    });
  });

/** One look at a page, in the categories asked for. */
async function look(url: string, port: number, wanted: readonly Category[]): Promise<Result> {
  const outcome = await lighthouse(url, { ...settings, port, onlyCategories: [...wanted] });
  if (!outcome) throw new Error(`Lighthouse gave no report for ${url}.`);
  const { lhr } = outcome;
  if (lhr.runtimeError) throw new Error(`${url}: ${lhr.runtimeError.message}`);
  return lhr;
}

/** The audits that took something off a category's score, worst first: “color-contrast 0”. */
const losses = (report: Result, category: Category): string[] =>
  (report.categories[category]?.auditRefs ?? [])
    .flatMap(({ id, weight }) => {
      const audit = report.audits[id];
      const score = audit?.score ?? null;
      return audit && weight > 0 && score !== null && score < 1
        ? [{ loss: weight * (1 - score), said: [id, score.toFixed(2), audit.displayValue] }]
        : [];
    })
    .sort((one, other) => other.loss - one.loss)
    .map(({ said }) => said.filter(Boolean).join(' '));

const scoreOf = (report: Result, category: Category): number =>
  report.categories[category]?.score ?? Number.NaN;

/**
 * Every page type on Lighthouse, one after the other: performance is the median of five looks, the rest is one look's,
 * since it does not vary. A page that is not built fails.
 */
export async function runLighthouse(sheet: Sheet): Promise<void> {
  sheet.heading(`Lighthouse on "phone" (${phone.saying}), performance the median of five`);
  const folder = built();
  const port = await freePort();
  await withSite(
    async (site) => {
      for (const [type, path] of pageTypes) {
        const [file = ''] = path.split('?');
        if (fileFor(folder, `/${file}`) === undefined) {
          sheet.line({ pass: false, text: `${type.padEnd(28)}  there is no /${file}` });
          continue;
        }
        const whole = await look(site + path, port, categories);
        const reports = [whole];
        while (reports.length < 5) reports.push(await look(site + path, port, ['performance']));
        const performances = reports.map((report) => scoreOf(report, 'performance'));
        const performance = median(performances);
        const line = scored(type, {
          performance,
          accessibility: scoreOf(whole, 'accessibility'),
          'best-practices': scoreOf(whole, 'best-practices'),
        });
        sheet.line(line);
        if (line.pass) continue;
        const typical = reports[performances.indexOf(performance)] ?? whole;
        for (const category of categories) {
          const report = category === 'performance' ? typical : whole;
          const lost = losses(report, category);
          if (scoreOf(report, category) < LEAST && lost.length > 0)
            sheet.note(`${category}: ${lost.join(', ')}`);
        }
      }
    },
    [`--remote-debugging-port=${port}`],
  );
}
