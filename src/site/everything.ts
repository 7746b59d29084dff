/** Everything this site may keep, for reading a file back in; fetched only when one is. */
import { practice } from './practice.ts';
import { workBegun } from './work.ts';
import { checklistTicks } from './checklist-ticks.ts';
import { keptDay } from './kept-day.ts';
import { progress, theme } from './kept.ts';
import { kit } from './kit.ts';
import type { Kept } from './storage.ts';

export const everything: readonly Kept<unknown>[] = [
  theme,
  progress,
  checklistTicks,
  keptDay,
  kit,
  practice,
  workBegun,
];
