/** The few words the live parts say to the page with. */
export const one = (root: ParentNode, selector: string): HTMLElement | null =>
  root.querySelector<HTMLElement>(selector);

export const all = <E extends Element = HTMLElement>(root: ParentNode, selector: string): E[] => [
  ...root.querySelectorAll<E>(selector),
];

/** Writes a text only where it differs, so that a reader's selection and a listener's place stay. */
export const setText = (element: Element | null, text: string): void => {
  if (element && element.textContent !== text) element.textContent = text;
};

export const make = (
  name: string,
  text: string,
  attributes: Readonly<Record<string, string>> = {},
  space?: string,
): Element => {
  const made = space ? document.createElementNS(space, name) : document.createElement(name);
  made.textContent = text;
  for (const key in attributes) made.setAttribute(key, attributes[key] ?? '');
  return made;
};

/** A button among words. */
export const button = (text: string, attributes: Readonly<Record<string, string>>): Element =>
  make('button', text, { type: 'button', class: 'tool', ...attributes });
