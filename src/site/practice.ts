import { acceptPractice, type Practice } from '../exercises/practice.ts';
import type { Kept } from './storage.ts';

export const practice: Kept<Practice> = { thing: 'practice', version: 1, accept: acceptPractice };
