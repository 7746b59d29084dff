import type { Raw } from './result-file.ts';
import type { Template } from './template.ts';

/** The answer to each kind of exercise while nothing is typed or ticked; a file holds it for the hints that were taken. */
export const BLANK: Readonly<Record<Template['kind'], Raw>> = {
  numeric: '',
  reading: '',
  choice: [],
  mistake: {},
  design: {},
  practical: {},
};

/** Whether nothing was typed or ticked. */
export const isBlank = (raw: Raw): boolean =>
  typeof raw === 'string'
    ? raw.trim() === ''
    : (Array.isArray(raw) ? raw : Object.values(raw)).every((text) => text === '');
