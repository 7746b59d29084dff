/** An element as it should stand. The page is built from these, and moved to the next state by them. */
export interface Branch {
  readonly name: string;
  /** An empty string is an attribute that is merely there; undefined is one that is not. */
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: readonly (Branch | string)[];
}

type Child = Branch | string | false | undefined;

export const el = (
  name: string,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly (Child | readonly Child[])[]
): Branch => ({
  name,
  attributes,
  children: children.flat().filter((child) => child !== false && child !== undefined && child !== '') as (Branch | string)[], // prettier-ignore
});

/** True of a state that an attribute only begins. */
const STATES = ['value', 'checked', 'selected'];

const dress = (element: Element, { attributes }: Branch): void => {
  for (const name of element.getAttributeNames())
    if (attributes[name] === undefined) element.removeAttribute(name);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && element.getAttribute(name) !== value)
      element.setAttribute(name, value);
    if (!STATES.includes(name)) continue;
    // What the reader did to a control outruns its attribute.
    const now = name === 'value' ? (value ?? '') : value !== undefined;
    const control = element as unknown as Record<string, unknown>;
    if (element.localName !== 'select' && control[name] !== now) control[name] = now;
  }
};

const grow = (branch: Branch): Element => {
  const element = document.createElement(branch.name);
  plant(element, branch.children);
  dress(element, branch);
  return element;
};

/** Makes an element's content what is wanted, and touches only what differs: fields keep their focus and selection. */
export const plant = (parent: Element, wanted: Branch['children']): void => {
  wanted.forEach((child, i) => {
    const there = parent.childNodes[i];
    if (typeof child === 'string') {
      if (there?.nodeType !== Node.TEXT_NODE) {
        const text = document.createTextNode(child);
        if (there) there.replaceWith(text);
        else parent.append(text);
      } else if (there.nodeValue !== child) there.nodeValue = child;
      return;
    }
    if (there instanceof Element && there.localName === child.name) {
      // Fields of another formula are other fields, however alike they look.
      if (there.id === (child.attributes['id'] ?? '')) {
        plant(there, child.children);
        dress(there, child);
        return;
      }
    }
    const made = grow(child);
    if (there) there.replaceWith(made);
    else parent.append(made);
  });
  while (parent.childNodes.length > wanted.length) parent.lastChild?.remove();
};
