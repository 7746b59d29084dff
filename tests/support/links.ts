import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileFor } from '../../src/site/commands/serve.ts';
import { root } from './files.ts';
import { attribute, elementsOf } from './markup.ts';
import { pagesIn } from './site.ts';

const host = 'http://site.invalid';

/**
 * Every address in a built site that leads nowhere, with the page it stands on: no such file, no such anchor,
 * or an address outside the base path.
 */
export function brokenLinks(folder: string, base: string): { broken: string[]; checked: number } {
  const ids = new Map<string, Set<string>>();
  const idsIn = (file: string): Set<string> => {
    let known = ids.get(file);
    if (known === undefined) {
      const elements = elementsOf(readFileSync(file, 'utf8'));
      known = new Set(elements.flatMap((element) => attribute(element, 'id') ?? []));
      ids.set(file, known);
    }
    return known;
  };

  const broken: string[] = [];
  let checked = 0;
  for (const { file, path } of pagesIn(folder)) {
    const html = readFileSync(join(root, file), 'utf8');
    for (const written of addressesIn(html)) {
      const url = new URL(written, `${host}${base}${path}`);
      if (url.origin !== host) continue;
      checked += 1;
      const wrong = fault(url);
      if (wrong !== undefined) broken.push(`${path}: ${written} (${wrong})`);
    }
  }
  return { broken, checked };

  function fault(url: URL): string | undefined {
    if (!url.pathname.startsWith(base)) return 'outside the base path';
    const target = fileFor(join(root, folder), `/${url.pathname.slice(base.length)}`);
    if (target === undefined || !existsSync(target)) return 'no such page or file';
    const anchor = decodeURIComponent(url.hash.slice(1));
    if (anchor === '' || anchor === 'top') return undefined;
    return idsIn(target).has(anchor) ? undefined : 'no such anchor';
  }
}

/** Addresses a page links to or fetches, the parts of islands included. */
function addressesIn(html: string): string[] {
  const names = ['href', 'src', 'component-url', 'renderer-url', 'before-hydration-url'];
  return elementsOf(html).flatMap((element) =>
    names
      .map((name) => attribute(element, name))
      .filter((value) => value !== undefined && value !== '')
      .concat(
        attribute(element, 'srcset')
          ?.split(/\s*,\s*/)
          .map((one) => one.split(' ')[0]) ?? [],
      )
      .filter((value): value is string => value !== undefined),
  );
}

/** Ids that stand twice on one page. */
export function repeatedIds(html: string): string[] {
  const all = elementsOf(html).flatMap((element) => attribute(element, 'id') ?? []);
  return all.filter((id, index) => all.indexOf(id) !== index);
}
