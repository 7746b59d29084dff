/** The few words the live parts say to the page with. */
export const one = (root: ParentNode, selector: string): HTMLElement | null =>
  root.querySelector<HTMLElement>(selector);

export const all = <E extends Element = HTMLElement>(root: ParentNode, selector: string): E[] => [
  ...root.querySelectorAll<E>(selector),
];

/**
 * Writes a text only where it differs, so that a reader's selection and a listener's place stay. A text that stands alone
 * is changed as it stands: to take it out and put another in costs a phone more.
 */
export const setText = (element: Element | null, text: string): void => {
  const was = element?.textContent;
  if (!element || was === text) return;
  const first = element.firstChild;
  (was && first?.nodeValue === was ? first : element).textContent = text;
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

/** What an element was last made: to ask the element itself costs a phone more. */
const made = new WeakMap<Element, Wanted>();

/** An element as it stands that nobody here has made yet. */
const asBuilt = ({ localName, attributes }: Element): Wanted => ({
  name: localName,
  attributes: Object.fromEntries([...attributes].map(({ name, value }) => [name, value])),
});

const isMade = (there: Element, { attributes = {}, text }: Wanted): boolean => {
  const was = made.get(there);
  if (!was || was.text !== text) return false;
  const before = was.attributes ?? {};
  for (const key in before) if (before[key] !== attributes[key]) return false;
  for (const key in attributes) if (before[key] !== attributes[key]) return false;
  return true;
};

/**
 * Makes an element's children what is wanted, touching only what differs: a drawing that moves keeps most of its lines,
 * and a phone has the less to lay out again. Where a line came or went the others keep their elements. Nobody else may
 * change those children.
 */
export const settle = (parent: Element, wanted: readonly Wanted[], space?: string): void => {
  const { children } = parent;
  const most = wanted.length;
  wanted.forEach((want, i) => {
    const { name, attributes = {}, text } = want;
    while (children[most] && children[i]?.localName !== name) children[i]?.remove();
    let there = children[i] ?? null;
    if (there?.localName !== name) there = parent.insertBefore(make(name, '', {}, space), there);
    if (isMade(there, want)) return;
    const was = made.get(there) ?? asBuilt(there);
    made.set(there, want);
    for (const old in was.attributes) if (!(old in attributes)) there.removeAttribute(old);
    for (const key in attributes)
      if (was.attributes?.[key] !== attributes[key]) there.setAttribute(key, attributes[key] ?? '');
    if (text !== undefined && text !== was.text) setText(there, text);
  });
  while (children[most]) children[most].remove();
};

/** A button among words. */
export const button = (text: string, attributes: Readonly<Record<string, string>>): Element =>
  make('button', text, { type: 'button', class: 'tool', ...attributes });
