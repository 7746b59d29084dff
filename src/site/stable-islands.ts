import { createHash } from 'node:crypto';
import { glob, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

/**
 * Gives every island a `uid` that depends on its place in the site alone. Astro hashes the folder
 * it was built in into it, so that two builds of one commit would differ. The uid serves hot
 * reloading only; drop this once Astro's own no longer carries the path.
 */
export const stableIslands = (): AstroIntegration => ({
  name: 'stable-islands',
  hooks: {
    'astro:build:done': async ({ dir }) => {
      const root = fileURLToPath(dir);
      for await (const file of glob('**/*.html', { cwd: root })) {
        const html = await readFile(root + file, 'utf8');
        const settled = settle(html, file.replaceAll('\\', '/'));
        if (settled !== html) await writeFile(root + file, settled);
      }
    },
  },
});

/** Rewrites the islands of one page; exported for its test. */
export const settle = (html: string, page: string): string => {
  let place = 0;
  return html.replace(/(<astro-island uid=")[^"]*(")/g, (_all, before: string, after: string) => {
    place += 1;
    const hash = createHash('sha256')
      .update(`${page}#${String(place)}`)
      .digest('hex')
      .slice(0, 8);
    return before + hash + after;
  });
};
