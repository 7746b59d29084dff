import type { Unit } from '../units.ts';

/** What stands after a field for a unit that is not written as it is named; the rest stand as they are. */
export const SIGN: Partial<Record<Unit, string>> = {
  deg: '°',
  stop: 'stops',
  '1': '',
  'f/': '',
  count: '',
};
