import { writeInput } from './read.ts';
import { idOf, type Formula, type Given } from './record.ts';

/**
 * Writes a plate's state for an address: every input that has a value, by evaluate's id, without needless spaces.
 * @example writeQuery(framingDistance, given) // 'format=36x24&orientation=portrait&…&focal-length=85mm'
 */
export const writeQuery = (formula: Formula, given: Given): string =>
  Object.entries(formula.inputs)
    .filter(([key]) => given[key] !== undefined)
    .map(([key, input]) => `${idOf(input)}=${spare(writeInput(input, given[key]))}`)
    .join('&');

/** Percent-encodes what must be, and leaves `f/4` and `4:5` readable. */
export const spare = (text: string): string =>
  encodeURIComponent(text.replaceAll(' ', ''))
    .replaceAll('%3A', ':')
    .replaceAll('%2F', '/')
    .replaceAll('%3B', ';');
