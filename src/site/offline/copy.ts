import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { AstroIntegration } from 'astro';
import { getManifest, injectManifest, type ManifestTransform } from 'workbox-build';

/** Bytes of gzip that the copy for use without a signal may cost a reader. */
export const LIMIT = 3_000_000;

const beside = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

/** What the copy is made of. Files under `_astro` never change under one name; all others are told apart by content. */
const files = {
  globPatterns: ['**/*.{html,css,js,json,csv,svg,png,woff2,webmanifest}'],
  // The worker itself, and pictures that stand in the README alone.
  globIgnores: ['sw.js', 'workbox-*.js', 'edition.json', 'tour/**'],
  dontCacheBustURLsMatching: /^_astro\//,
  // Nothing is left out for being large without a word: the limit below speaks.
  maximumFileSizeToCacheInBytes: 100_000_000,
};

/** The address of a page, not its file's: hosts send `x/index.html` on to `x/`. Sorted, so that builds do not differ. */
const addresses: ManifestTransform = (entries) => ({
  manifest: entries
    .map((entry) => ({ ...entry, url: entry.url.replace(/(^|\/)index\.html$/, '$1') || './' }))
    .toSorted((a, b) => (a.url < b.url ? -1 : 1)),
});

/** What `edition.json` tells a page about the copy that belongs to it. */
export interface Edition {
  /** Names the content: the same files give the same name. */
  readonly edition: string;
  readonly files: number;
  readonly bytes: number;
}

/**
 * Writes the worker that keeps a built site on a reader's device: `sw.js`, its library beside it, and `edition.json`.
 *
 * @returns how much it is. Throws: Error where it is more than the limit, or a file could not be taken in.
 * @example await writeCopy('dist')
 */
export async function writeCopy(
  folder: string,
  limit = LIMIT,
): Promise<Edition & { readonly gzip: number }> {
  const glob = { ...files, globDirectory: folder };
  const listed = await getManifest({ ...glob, manifestTransforms: [addresses] });
  const { manifestEntries, warnings } = listed;
  if (warnings.length > 0) throw new Error(`The offline copy is not whole: ${warnings.join(' ')}`);

  const sizes = manifestEntries.map(({ url }) => ({
    url,
    size: gzipSync(readFileSync(join(folder, url.replace(/\/$/, '/index.html'))), { level: 9 })
      .byteLength,
  }));
  const gzip = sizes.reduce((sum, { size }) => sum + size, 0);
  if (gzip > limit) {
    const largest = sizes.toSorted((a, b) => b.size - a.size).slice(0, 5);
    throw new Error(
      `The offline copy is ${inMegabytes(gzip)} of gzip, and ${inMegabytes(limit)} is the most it may be. ` +
        `The largest files: ${largest.map(({ url, size }) => `${url} ${inMegabytes(size)}`).join(', ')}.`,
    );
  }

  const edition: Edition = {
    edition: hash(JSON.stringify(manifestEntries)),
    files: manifestEntries.length + 1,
    bytes: listed.size,
  };
  writeFileSync(join(folder, 'edition.json'), `${JSON.stringify(edition)}\n`);
  const worker = join(folder, 'sw.js');
  const { warnings: more } = await injectManifest({
    ...glob,
    manifestTransforms: [addresses],
    additionalManifestEntries: [{ url: 'edition.json', revision: edition.edition }],
    swSrc: beside('worker.js'),
    swDest: worker,
    injectionPoint: "Reflect.get(self, 'files')",
  });
  if (more.length > 0) throw new Error(`The offline copy is not whole: ${more.join(' ')}`);
  const library = workbox();
  const name = `workbox-${hash(library)}.js`;
  writeFileSync(join(folder, name), library);
  writeFileSync(worker, readFileSync(worker, 'utf8').replace("'workbox.js'", `'${name}'`));
  return { ...edition, gzip };
}

/** Gives every build its copy for use without a signal, and says how large it is. */
export const offlineCopy = (): AstroIntegration => ({
  name: 'offline-copy',
  hooks: {
    'astro:server:setup': ({ server }) => {
      server.middlewares.use((request, response, next) => {
        if (request.url?.endsWith('/sw.js') !== true) next();
        else
          response
            .setHeader('Content-Type', 'text/javascript')
            .end(readFileSync(beside('leave.js')));
      });
    },
    'astro:build:done': async ({ dir, logger }) => {
      const { edition, files, bytes, gzip } = await writeCopy(fileURLToPath(dir));
      logger.info(
        `edition ${edition}: ${files} files, ${inMegabytes(bytes)}, ${inMegabytes(gzip)} of gzip (limit ${inMegabytes(LIMIT)})`,
      );
    },
  },
});

/** The parts of Workbox that the worker uses, as it is published for browsers, each before those that need it. */
const workbox = (): string => {
  const { resolve } = createRequire(createRequire(import.meta.url).resolve('workbox-build'));
  return ['core', 'routing', 'strategies', 'precaching']
    .map((part) =>
      join(dirname(resolve(`workbox-${part}/package.json`)), `build/workbox-${part}.prod.js`),
    )
    .map((file) => readFileSync(file, 'utf8').replace(/\n?\/\/# sourceMappingURL=.*/, ''))
    .join('\n');
};

const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 12);
const inMegabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(2)} MB`;
