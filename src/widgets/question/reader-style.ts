/** The decimal mark of the reader’s own language. */
export const localMark = (): 'point' | 'comma' =>
  new Intl.NumberFormat(undefined, { numberingSystem: 'latn' })
    .formatToParts(1.5)
    .some(({ type, value }) => type === 'decimal' && value === ',')
    ? 'comma'
    : 'point';

export type System = 'metric' | 'imperial';

/** Marks which of the two buttons of a page is chosen. */
export const showSystem = (root: ParentNode, system: System): void => {
  for (const press of root.querySelectorAll('[data-do=metric], [data-do=imperial]'))
    press.setAttribute('aria-pressed', String(press.getAttribute('data-do') === system));
};
