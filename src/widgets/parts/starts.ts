// What plates and tables share of a formula's state lives with the formula.
export { inPlay, inWords, onlyInPlay } from '../../formula/in-play.ts';
export { writeQuery } from '../../formula/query.ts';
