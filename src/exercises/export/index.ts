import { gift } from './gift.ts';
import type { Item } from './item.ts';
import { moodleXml } from './moodle-xml.ts';
import { qtiPackage, type Version } from './qti.ts';
import { zip } from './zip.ts';

export { itemOf, type Item } from './item.ts';
export { svgOf } from './svg.ts';
export type { Picture } from './figure.ts';

/** What course systems read. */
export type Format = 'qti' | 'qti-2.2' | 'moodle-xml' | 'gift';

/** A file to save. */
export interface Exported {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

export interface Exporting {
  readonly title: string;
  /** As an assignment has it. Only one format holds hints at all. */
  readonly hints?: 'free' | 'tenth' | 'none';
}

/** A file’s name from a title: letters and digits that every system takes. */
const stem = (title: string): string =>
  title
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60) || 'exercises';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/**
 * Writes items for a course system.
 *
 * Model: the same items and title give the same bytes.
 * Throws: RangeError where there is nothing to write, or an item comes twice.
 * @example exportAs('gift', [itemOf(variant, formulas, picture)], { title: 'Light' }).name // 'light.gift.txt'
 */
export const exportAs = (
  format: Format,
  items: readonly Item[],
  { title, hints = 'free' }: Exporting,
): Exported => {
  if (items.length === 0)
    throw new RangeError('There is no question to hand over. Choose one or more.');
  const ids = items.map(({ id }) => id);
  const twice = ids.find((id, at) => ids.indexOf(id) !== at);
  if (twice !== undefined)
    throw new RangeError(`The question ${twice} comes twice. Choose each variant once.`);
  const packed = (name: string, version: Version): Exported => ({
    name: `${stem(title)}.${name}.zip`,
    type: 'application/zip',
    bytes: zip(qtiPackage(items, title, version)),
  });
  switch (format) {
    case 'qti':
      return packed('qti', '2.1');
    case 'qti-2.2':
      return packed('qti-2.2', '2.2');
    case 'moodle-xml':
      return {
        name: `${stem(title)}.moodle.xml`,
        type: 'application/xml',
        bytes: utf8(moodleXml(items, title, hints)),
      };
    case 'gift':
      return {
        name: `${stem(title)}.gift.txt`,
        type: 'text/plain',
        bytes: utf8(gift(items, title)),
      };
  }
};
