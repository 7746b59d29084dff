import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/formulas.ts';
import { root } from '../support/files.ts';

interface Answer {
  readonly given: Readonly<Record<string, string>>;
  readonly results: Readonly<Record<string, { value: unknown; unit: unknown; text: string }>>;
}

interface Said {
  code: number | null;
  out: string;
  err: string;
}

/** Runs the command as npm does, with the words given and nothing else on its mind. */
function evaluate(words: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<Said> {
  return new Promise((resolve) => {
    const script = join(root, 'src/site/commands/evaluate.ts');
    const child = spawn(process.execPath, [script, ...words], {
      cwd: root,
      env: { PATH: process.env['PATH'], ...env },
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    child.on('close', (code) => {
      resolve({ code, out, err });
    });
  });
}

const ask = async (...words: string[]): Promise<Answer> => {
  const { code, out, err } = await evaluate(words);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out.match(/\n/g)).toHaveLength(1);
  return JSON.parse(out) as Answer;
};

const framing = [
  'framing-distance',
  'format=36x24',
  'orientation=portrait',
  'focal-length=85mm',
  'frame-height=0.90m',
];

describe.concurrent('npm run evaluate', () => {
  it('prints one line of JSON: formula, canonical given, unrounded results with unit and text', async () => {
    // By hand: 2 atan(36 / 200) = 2 x 10.2040 degrees = 0.356186 rad.
    expect(await ask('angle-of-view', 'format=36x24', 'focal-length=100mm')).toMatchObject({
      formula: 'angle-of-view',
      given: {
        format: '36x24',
        'focal-length': '100 mm',
        'subject-distance': 'infinity',
      },
      results: {
        horizontal: { value: expect.closeTo(0.356186, 6) as number, unit: 'rad', text: '20.4°' },
      },
    });
  });

  it('takes symbols for names, case and all', async () => {
    const { results } = await ask(
      'framing-distance',
      'format=36x24',
      'orientation=portrait',
      'f=85mm',
      'H=0.90m',
    );
    // m = 36/900, s = f (1 + 1/m) = 85 mm x 26.
    expect(results).toMatchObject({
      'subject-distance': { value: expect.closeTo(2.21, 12) as number, unit: 'm' },
    });
  });

  it('solves for an input written name=?', async () => {
    const words = framing.map((word) => word.replace('85mm', '?'));
    expect(await ask(...words, 'subject-distance=2.21m')).toMatchObject({
      results: { 'focal-length': { value: expect.closeTo(0.085, 9) as number, unit: 'm' } },
    });
  });

  it('changes only the text for another system or decimal mark', async () => {
    const plain = await ask(...framing);
    const other = await ask(...framing, '--system=imperial', '--decimal=comma');
    const values = (answer: Answer): unknown =>
      Object.entries(answer.results).map(([id, { value, unit }]) => [id, value, unit]);
    expect(values(other)).toEqual(values(plain));
    expect(other.given).toEqual(plain.given);
    expect(JSON.stringify(other.results)).toMatch(/"text":"[^"]*(ft|in|′|″)/);
    expect((await ask(...framing, '--decimal=comma')).results).toMatchObject({
      'subject-distance': { text: '2,21 m' },
    });
  });

  it('says the same wherever and in whatever language it runs', async () => {
    const runs = await Promise.all(
      [
        { LC_ALL: 'en_GB.UTF-8', TZ: 'Europe/London' },
        { LC_ALL: 'de_DE.UTF-8', TZ: 'Pacific/Auckland' },
        { LC_ALL: 'ar_EG.UTF-8', LANG: 'ar_EG.UTF-8', TZ: 'America/St_Johns' },
      ].map((env) => evaluate(framing, env)),
    );
    expect(new Set(runs.map(({ out }) => out)).size).toBe(1);
    expect(runs[0]?.out).toMatch(/2\.21 m/);
  });

  it.each<[string, string[], RegExp]>([
    ['no formula', [], /angle-of-view.*equivalence/],
    ['an unknown formula', ['nope'], new RegExp(Object.keys(formulas).join('.*'))],
    ['a name from every object', ['constructor'], /The formulas are/],
    ['an unknown option', ['angle-of-view', '--units=feet'], /--system=metric or imperial/],
    ['an option given twice', [...framing, '--decimal=comma', '--decimal=point'], /given twice/],
    ['a word without =', [...framing, 'portrait'], /Expected name=value/],
    ['a word without a name', [...framing, '=3'], /Expected name=value/],
    ['an unknown name', [...framing, 'zoom=3'], /zoom.*focal-length/],
    ['a name of another case', ['framing-distance', 'F=85mm'], /F/],
    ['a name given twice', [...framing, 'focal-length=50mm'], /twice/],
    ['a name given by id and by symbol', [...framing, 'f=50mm'], /twice/],
    ['a missing input', ['framing-distance', 'format=36x24'], /focal-length/],
    ['a number without its unit', ['angle-of-view', 'format=36x24', 'focal-length=85'], /unit|mm/],
    [
      'a unit of another kind',
      ['angle-of-view', 'format=36x24', 'focal-length=85s'],
      /Focal length/i,
    ],
    [
      'a value out of range',
      ['angle-of-view', 'format=36x24', 'focal-length=0mm'],
      /8 mm|between|above/,
    ],
    ['no number', ['angle-of-view', 'format=36x24', 'focal-length=NaN'], /Focal length/i],
    ['an ambiguous number', [...framing.slice(0, 4), 'frame-height=3,145mm'], /3/],
    [
      'sixty-five characters',
      ['angle-of-view', 'format=36x24', `focal-length=${'1'.repeat(63)}mm`],
      /64|long/,
    ],
    [
      'a question without a result',
      framing.map((word) => word.replace('85mm', '?')),
      /exactly one result/,
    ],
  ])('refuses %s: nothing on output, one line of error, exit 2', async (_, words, error) => {
    const { code, out, err } = await evaluate(words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(err).toMatch(error);
    expect(err).not.toMatch(/\n\s+at |our fault/);
  });
});
