/**
 * Puts a base before a root-relative address; leaves every other address as it is.
 *
 * @example joinBase('/sub', '/glossary/') // '/sub/glossary/'
 * @example joinBase('/sub', '#top') // '#top'
 */
export const joinBase = (base: string, address: string): string => {
  if (!address.startsWith('/') || address.startsWith('//')) return address;
  return base.replace(/\/+$/, '') + address;
};
