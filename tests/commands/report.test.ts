import { describe, expect, it } from 'vitest';
import { single, tally } from '../../src/site/commands/report.ts';

interface Row {
  status: string;
  message?: string;
  tests: Record<string, string>;
}

const report = (...files: Row[]): string =>
  JSON.stringify({
    testResults: files.map(({ status, message = '', tests }) => ({
      name: '/somewhere/tests/a.test.ts',
      status,
      message,
      assertionResults: Object.entries(tests).map(([fullName, state]) => ({
        fullName,
        status: state,
        failureMessages: state === 'failed' ? ['expected 1, found 2'] : [],
      })),
    })),
  });

const good: Row = { status: 'passed', tests: { one: 'passed', two: 'passed' } };

describe('counting a report', () => {
  it.each<[string, string | undefined, number, number, number]>([
    ['all passed', report(good), 0, 2, 0],
    [
      'a failed test',
      report({ status: 'failed', tests: { one: 'passed', two: 'failed' } }),
      1,
      1,
      1,
    ],
    [
      'a skipped test',
      report({ status: 'passed', tests: { one: 'passed', two: 'skipped' } }),
      0,
      1,
      1,
    ],
    ['a test put off', report({ status: 'passed', tests: { one: 'todo' } }), 0, 0, 1],
    [
      'a file that cannot be read',
      report(good, { status: 'failed', message: 'no', tests: {} }),
      1,
      2,
      1,
    ],
    ['a file with no test', report(good, { status: 'passed', tests: {} }), 0, 2, 1],
    ['a fault outside the tests', report({ status: 'failed', tests: { one: 'passed' } }), 1, 1, 1],
    ['a run that ended badly', report(good), 1, 2, 1],
    ['no test at all', report(), 0, 0, 1],
    ['a missing report', undefined, 0, 0, 1],
    ['a report cut short', report(good).slice(0, -9), 0, 0, 1],
    ['a report of another kind', '{"ok":true}', 0, 0, 1],
    ['nothing', 'null', 0, 0, 1],
  ])('%s', (_, text, code, passed, failed) => {
    expect(tally(text, code, 'output')).toMatchObject({ passed, failed });
  });

  it('says which test failed and why', () => {
    const { lines } = tally(report({ status: 'failed', tests: { 'is wide': 'failed' } }), 1, '');
    expect(lines).toEqual(['tests/a.test.ts: is wide\nexpected 1, found 2']);
  });

  it('names a test that passed at a later try only', () => {
    const text = report(good).replace(
      '"failureMessages":[]',
      '"failureMessages":["expected 1, found 2"]',
    );
    const { passed, failed, lines } = tally(text, 0, '');
    expect({ passed, failed }).toEqual({ passed: 2, failed: 0 });
    expect(lines).toEqual([
      'tests/a.test.ts: one\npassed at a later try only; before that:\nexpected 1, found 2',
    ]);
  });

  it('counts a stage as one test and keeps both ends of a long output', () => {
    const long = Array.from({ length: 200 }, (_, i) => `line ${i}`).join('\n');
    expect(single(0, long)).toEqual({ passed: 1, failed: 0, lines: [] });
    const { failed, lines } = single(2, long);
    expect(failed).toBe(1);
    expect(lines[0]).toMatch(/^line 0\n[^]*140 lines left out[^]*\nline 199$/);
  });
});
