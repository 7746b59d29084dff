const seen = new WeakMap<Request, Set<string>>();

/** True the first time a name comes up while one page is being built. */
export const firstOnPage = (page: Request, name: string): boolean => {
  const names = seen.get(page) ?? new Set<string>();
  seen.set(page, names);
  if (names.has(name)) return false;
  names.add(name);
  return true;
};
