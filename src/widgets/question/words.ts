import type { Template } from '../../exercises/template.ts';

/** Each kind of exercise, as readers call it. */
export const kindWords: Readonly<Record<Template['kind'], string>> = {
  numeric: 'a number',
  choice: 'a choice',
  reading: 'reading a drawing or table',
  mistake: 'finding the mistake',
  design: 'a design',
  practical: 'with your own tape and meter',
};
