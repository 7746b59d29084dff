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

/** An element as it should stand; without a text its content is left alone. */
export interface Wanted {
  readonly name: string;
  readonly attributes?: Readonly<Record<string, string>>;
  readonly text?: string;
}

/**
 * Makes an element's children what is wanted, touching only what differs: a drawing that moves keeps most of its lines,
 * and a phone has the less to lay out again.
 */
export const settle = (parent: Element, wanted: readonly Wanted[], space?: string): void => {
  wanted.forEach(({ name, attributes = {}, text }, i) => {
    const there = parent.children[i];
    if (there?.localName !== name) {
      const made = make(name, text ?? '', attributes, space);
      if (there) there.replaceWith(made);
      else parent.append(made);
      return;
    }
    for (const old of there.getAttributeNames())
      if (!(old in attributes)) there.removeAttribute(old);
    for (const [key, value] of Object.entries(attributes))
      if (there.getAttribute(key) !== value) there.setAttribute(key, value);
    if (text !== undefined) setText(there, text);
  });
  while (parent.children.length > wanted.length) parent.lastElementChild?.remove();
};

/** A button among words. */
export const button = (text: string, attributes: Readonly<Record<string, string>>): Element =>
  make('button', text, { type: 'button', class: 'tool', ...attributes });
