import { kitOf, type Kit } from '../sitting/kit.ts';
import type { Kept } from './storage.ts';

/** The reader's own kit. public/theme.js hands its text to the page before the first paint; see widgets/parts/kit.ts. */
export const kit: Kept<Kit> = { thing: 'kit', version: 1, accept: kitOf };
