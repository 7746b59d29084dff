import { randomInt } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { compile } from 'mathjs';
import type { Page } from 'playwright-core';
import { complete, readInput } from '../../formula/read.ts';
import { idOf } from '../../formula/record.ts';
import type { Formula } from '../../formula/record.ts';
import { formulas } from '../../formulas.ts';
import { rivals } from './bench-expressions.ts';
import type { Rival } from './bench-expressions.ts';
import { startChromium } from './browser.ts';
import { collect, program, root } from './run.ts';
import { serve } from './serve.ts';

/** "phone", the one profile that every limit is measured on. */
const phone = { cpu: 4, bitsPerSecond: 1_600_000, latency: 150 };
/** Milliseconds from the key to the painted result: two and a half frames where something is redrawn, else one. */
const limits = { redraw: 44, input: 1000 / 60 };

let misses = 0;

function judge(name: string, milliseconds: number, limit: number): void {
  const pass = milliseconds <= limit;
  if (!pass) misses += 1;
  console.log(
    `${pass ? 'pass' : 'FAIL'}  ${name.padEnd(52)} ${milliseconds.toFixed(1).padStart(7)} ms  limit ${limit.toFixed(1)} ms`,
  );
}

const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

/** Nanoseconds a call takes: median of five rounds, each long enough for the clock. */
function nanoseconds(call: (index: number) => number): number {
  let sum = 0;
  const round = (calls: number): number => {
    const start = performance.now();
    for (let index = 0; index < calls; index += 1) sum += call(index & 63);
    return performance.now() - start;
  };
  let calls = 1000;
  while (round(calls) < 25) calls *= 2;
  const rounds = [1, 2, 3, 4, 5].map(() => (round(calls) / calls) * 1e6);
  // The sum is used, so that no compiler may leave the calls out.
  if (Number.isNaN(sum)) throw new Error('A result was no number.');
  return median(rounds);
}

/** The record's values for a rival's texts, as compute wants them. */
function valuesFor(formula: Formula, given: Rival['given']): Record<string, unknown> {
  const read: Record<string, unknown> = {};
  for (const [key, input] of Object.entries(formula.inputs)) {
    const text = given[idOf(input)];
    if (text !== undefined) read[key] = readInput(input, text, { stored: true });
  }
  return complete(formula, read);
}

async function raceFormulas(): Promise<void> {
  console.log(
    'Nanoseconds a call: the formula with all its results, bare arithmetic for the main one, mathjs for the same',
  );
  for (const [id, load] of Object.entries(formulas)) {
    const rival = rivals[id];
    if (rival === undefined) throw new Error(`bench-expressions.ts has no line for ${id}.`);
    const formula = (await load()).default;
    const values = valuesFor(formula, rival.given);
    const start = values[rival.moved] as number;
    const moved = Array.from({ length: 64 }, (_, index) => start * (1 + index / 1000));
    const inputs = moved.map((x) => ({ ...values, [rival.moved]: x }));
    const scopes = moved.map(
      (x) => new Map<string, number>([...Object.entries(rival.scope), ['x', x]]),
    );
    const compiled = compile(rival.expression);

    const ours = (index: number): number =>
      formula.compute(inputs[index] as Record<string, unknown>)[rival.result] as number;
    const bare = (index: number): number => rival.bare(moved[index] as number);
    const mathjs = (index: number): number =>
      compiled.evaluate(scopes[index] as Map<string, number>) as number;

    for (const index of [0, 31, 63]) {
      const [a, b, c] = [ours(index), bare(index), mathjs(index)];
      if (Math.max(Math.abs(a - b), Math.abs(a - c)) > 1e-12 * Math.abs(a)) {
        throw new Error(`${id}: ours ${a}, bare ${b}, mathjs ${c} do not agree.`);
      }
    }
    const times = [ours, bare, mathjs].map((call) => nanoseconds(call).toFixed(1).padStart(8));
    console.log(`      ${id.padEnd(20)} ${times.join('  ')}`);
  }
}

/** Makes a page slow as the phone is: processor and network. */
async function slowDown(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: phone.cpu });
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: phone.latency,
    downloadThroughput: phone.bitsPerSecond / 8,
    uploadThroughput: phone.bitsPerSecond / 8,
  });
}

/** Milliseconds from each of five keys to the paint that shows its result. */
async function keyToPaint(page: Page, field: string): Promise<number[]> {
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(globalThis, { times });
    addEventListener(
      'input',
      (event) => {
        requestAnimationFrame(() => {
          // A message sent from a frame arrives once that frame is painted.
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => times.push(performance.now() - event.timeStamp);
          port2.postMessage(null);
        });
      },
      true,
    );
  });
  await page.locator(field).first().focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  // The first two warm up; then five are counted.
  for (let key = 0; key < 7; key += 1) {
    await page.keyboard.press(key % 2 === 0 ? '1' : 'Backspace');
    await page.waitForTimeout(500);
  }
  const times = await page.evaluate(() => (globalThis as unknown as { times: number[] }).times);
  if (times.length !== 7) throw new Error(`Of 7 keys ${times.length} were answered.`);
  return times.slice(2);
}

async function timePages(): Promise<void> {
  const folder = join(root, 'dist');
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error('There is no built site to time: run npm run build first.');
  }
  const site = await serve({ folder, port: 0 });
  const browser = await startChromium();
  try {
    console.log(
      `\nFrom key to painted result on "phone" (processor ${phone.cpu} times slower, 1.6 Mbit/s, 150 ms), median of five`,
    );
    for (const id of Object.keys(formulas)) {
      const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
      const page = await context.newPage();
      await slowDown(page);
      await page.goto(`${site.url}plates/${id}/`, { waitUntil: 'load' });
      const plate = `[data-plate="${id}"]`;
      await page.locator(`${plate} .result`).first().scrollIntoViewIfNeeded();
      const field = `${plate} input:is([type=text], :not([type]))`;
      await page.locator(field).first().scrollIntoViewIfNeeded();
      await page.waitForLoadState('networkidle');
      const drawn = (await page.locator(`${plate} .drawing svg`).count()) > 0;
      const times = await keyToPaint(page, field);
      judge(
        `${id}: ${drawn ? 'redraw' : 'input'}`,
        median(times),
        drawn ? limits.redraw : limits.input,
      );
      await context.close();
    }
  } finally {
    await browser.close();
    await site.close();
  }
}

async function tryRandomSeed(): Promise<void> {
  const seed = randomInt(1, 2 ** 31 - 1);
  const { code, output } = await collect(
    program('vitest'),
    ['run', '--project=unit', '--reporter=dot'],
    { env: { SBN_SEED: String(seed) } },
  );
  if (code !== 0) misses += 1;
  console.log(
    `\n${code === 0 ? 'pass' : 'FAIL'}  properties from the random seed ${seed} (again with SBN_SEED=${seed} npm run test:unit)`,
  );
  if (code !== 0) console.log(output.slice(-4000));
}

await raceFormulas();
await timePages();
await tryRandomSeed();
console.log(misses === 0 ? '\nEvery limit is kept.' : `\n${misses} not kept.`);
process.exitCode = misses === 0 ? 0 : 1;
