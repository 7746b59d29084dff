import type { Style } from '../../formula/notation/write.ts';

/** The decimal mark of the reader’s own language. */
const localMark = (): 'point' | 'comma' =>
  new Intl.NumberFormat(undefined, { numberingSystem: 'latn' })
    .formatToParts(1.5)
    .some(({ type, value }) => type === 'decimal' && value === ',')
    ? 'comma'
    : 'point';

/** How numbers are written for this reader: the mark of their language, the units the address asks for. */
export const readerStyle = (): Style => ({
  decimal: localMark(),
  system: new URLSearchParams(location.search).get('units') === 'imperial' ? 'imperial' : 'metric',
});
