import { execFileSync } from 'node:child_process';

/** The day of the last commit, as git knows it; of this build where there is no git. */
const day = (): string => {
  try {
    return execFileSync('git', ['log', '-1', '--format=%cs'], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim();
  } catch {
    return '';
  }
};

const iso = day() || new Date().toISOString().slice(0, 10);

/** When the tables were worked out, for a printed sheet: as a machine reads it, and as people do. */
export const workedOut = {
  iso,
  text: new Date(`${iso}T00:00:00Z`).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }),
} as const;
