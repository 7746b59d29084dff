import type { Branch } from './tree.ts';

/** Elements that hold nothing. */
const HOLLOW = ['input', 'br', 'col'];

const safe = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** What tree.ts describes, as the page's own markup when the site is built; no space comes between what stands in it. */
export const markupOf = (children: Branch['children']): string =>
  children
    .map((child) => {
      if (typeof child === 'string') return safe(child);
      const { name, attributes, children: inner } = child;
      const dressed = Object.entries(attributes)
        .filter(([, value]) => value !== undefined)
        .map(([key, value]) => (value === '' ? ` ${key}` : ` ${key}="${safe(value ?? '')}"`))
        .join('');
      return `<${name}${dressed}>${HOLLOW.includes(name) ? '' : `${markupOf(inner)}</${name}>`}`;
    })
    .join('');
