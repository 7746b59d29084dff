import { timeDesk } from './bench-desk.ts';
import { raceFormulas } from './bench-formulas.ts';
import { runLighthouse } from './bench-lighthouse.ts';
import { Sheet } from './bench-phone.ts';
import { timeRedraws } from './bench-redraw.ts';
import { tryRandomSeed } from './bench-seed.ts';
import { timeTasks } from './bench-tasks.ts';

const parts: Readonly<Record<string, (sheet: Sheet) => Promise<void>>> = {
  formulas: raceFormulas,
  redraw: timeRedraws,
  tasks: timeTasks,
  desk: timeDesk,
  lighthouse: runLighthouse,
  seed: tryRandomSeed,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !Object.hasOwn(parts, name));
if (unknown.length > 0) {
  console.error(
    `There is no part "${unknown.join('", "')}": name one or more of ${Object.keys(parts).join(', ')}, or none for all.`,
  );
  process.exit(2);
}
const sheet = new Sheet();
for (const [name, part] of Object.entries(parts))
  if (asked.length === 0 || asked.includes(name)) await part(sheet);
console.log(sheet.misses === 0 ? '\nEvery limit is kept.' : `\n${sheet.misses} not kept.`);
process.exitCode = sheet.misses === 0 ? 0 : 1;
