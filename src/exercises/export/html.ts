import type { ReadingTable } from '../reading-table.ts';

/** Signs no XML may hold, whatever they are escaped as. */
// eslint-disable-next-line no-control-regex -- they are what is looked for
const BARRED = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu;

const SIGNS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** A text as XML and HTML hold it, in elements and in quoted attributes alike. */
export const escape = (text: string): string =>
  text.replaceAll(BARRED, '').replaceAll(/[&<>"]/g, (sign) => SIGNS[sign] ?? sign);

/** A line with its *stars* set; nothing else in it is markup. */
export const line = (text: string): string =>
  escape(text.trim().replaceAll(/\s+/g, ' ')).replaceAll(/\*([^*]+)\*/g, '<em>$1</em>');

/** Paragraphs as they stand on the site: blank lines part them. */
export const paragraphs = (text: string): string =>
  text
    .trim()
    .split(/\n\s*\n/)
    .filter(Boolean)
    .map((paragraph) => `<p>${line(paragraph)}</p>`)
    .join('');

export const list = (texts: readonly string[]): string =>
  texts.length > 0 ? `<ul>${texts.map((text) => `<li>${line(text)}</li>`).join('')}</ul>` : '';

export const table = ({ caption, head, rows }: ReadingTable): string => {
  const heads = head
    .map((text, i) => (i === 0 ? '<td></td>' : `<th scope="col">${escape(text)}</th>`))
    .join('');
  const body = rows
    .map(([first = '', ...cells]) => {
      const rest = cells.map((cell) => `<td>${escape(cell)}</td>`).join('');
      return `<tr><th scope="row">${escape(first)}</th>${rest}</tr>`;
    })
    .join('');
  return `<table><caption>${escape(caption)}</caption><thead><tr>${heads}</tr></thead><tbody>${body}</tbody></table>`;
};
