/** One stage of `npm test`: how many of its tests passed and failed, and what to say about the failures. */
export interface Tally {
  readonly passed: number;
  readonly failed: number;
  readonly lines: readonly string[];
}

/** The parts that are read of the JSON report that Vitest writes. */
interface Report {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message: string;
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly failureMessages: readonly string[];
    }[];
  }[];
}

/** A stage that counts as one test. */
export function single(code: number, output: string): Tally {
  return code === 0
    ? { passed: 1, failed: 0, lines: [] }
    : { passed: 0, failed: 1, lines: [shorten(output)] };
}

/**
 * Counts a Vitest report. What did not run counts as failed: a skipped test, a file that could not be
 * read, a report that is missing, empty or cut short, and a run that ended badly though every test passed.
 * A test that passed at a later try counts as passed, and is named.
 */
export function tally(report: string | undefined, code: number, output: string): Tally {
  const read = parse(report);
  if (read === undefined) {
    return { passed: 0, failed: 1, lines: [`No readable report.\n${shorten(output)}`] };
  }
  let passed = 0;
  const lines: string[] = [];
  const notes: string[] = [];
  for (const file of read.testResults) {
    const name = file.name.replace(/^.*\/tests\//, 'tests/');
    for (const test of file.assertionResults) {
      if (test.status === 'passed') {
        passed += 1;
        // What a passed test has to report are the failures of its earlier tries.
        if (test.failureMessages.length > 0) {
          notes.push(
            `${name}: ${test.fullName}\npassed at a later try only; before that:\n${shorten(test.failureMessages.join('\n'), 14)}`,
          );
        }
      } else if (test.status === 'failed') {
        lines.push(`${name}: ${test.fullName}\n${shorten(test.failureMessages.join('\n'), 14)}`);
      } else lines.push(`${name}: ${test.fullName}\nwas not run; every test must run.`);
    }
    const ranNone = file.assertionResults.length === 0;
    const failedOutside =
      file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed');
    if (ranNone || failedOutside) {
      lines.push(`${name}: the file itself\n${shorten(file.message || 'holds no test.')}`);
    }
  }
  if (passed + lines.length === 0) lines.push('No test was found.');
  if (lines.length === 0 && code !== 0) {
    lines.push(`Every test passed, yet the run ended badly.\n${shorten(output)}`);
  }
  return { passed, failed: lines.length, lines: [...lines, ...notes] };
}

function parse(report: string | undefined): Report | undefined {
  try {
    const read = JSON.parse(report ?? '') as Partial<Report> | null;
    return Array.isArray(read?.testResults) ? (read as Report) : undefined;
  } catch {
    return undefined;
  }
}

/** The last lines of a long text, where programs say what went wrong; a short one as it is. */
function shorten(text: string, most = 60): string {
  const lines = text
    .trim()
    .split('\n')
    .filter((line) => !/^\s+at .*node_modules/.test(line));
  if (lines.length <= most) return lines.join('\n');
  const head = Math.ceil(most / 2);
  return [
    ...lines.slice(0, head),
    `... ${lines.length - most} lines left out ...`,
    ...lines.slice(head - most),
  ].join('\n');
}
