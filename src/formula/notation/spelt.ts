/** What a record names in small letters, as ids are, and readers know otherwise. */
const SPELT: Readonly<Record<string, string>> = {
  iso: 'ISO',
  ev: 'EV',
  airy: 'Airy',
  t01: 't0.1',
  t05: 't0.5',
};

/**
 * The name of an input or a result as a reader spells it. Build time only.
 * @example spelt('metered ev') // 'metered EV'
 */
export const spelt = (name: string): string =>
  name.replace(/\b(?:iso|ev|airy|t0[15])\b/g, (word) => SPELT[word] ?? word);
