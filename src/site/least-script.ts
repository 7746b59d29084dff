interface Context {
  readonly environment: { readonly name: string };
}

interface Chunk {
  readonly type: string;
  readonly name?: string;
  readonly isEntry?: boolean;
  readonly facadeModuleId?: string | null;
}

/** A file for the code that fetches styles before a part; once nobody imports it, it is left out. */
export const stylesFirst = { name: 'styles-first', test: /vite\/preload-helper/ };

const asked = /import \{ \w+ as __vitePreload \} from "[^"]*";\n/;
const named =
  /__vitePreload\(async \(\) => \{\s*const (\{ [\w, ]+ \}) = await (import\("[^"]*"\));\s*return \1;\s*\}, __VITE_PRELOAD__\)/g;

/**
 * Leaves out what the tools add to the reader's script and no page of ours asks for.
 *
 * - Parts that are fetched later come with code that first fetches their styles. They have none: styles are in the page.
 * - Svelte's own start-up script is built for islands, and there are none: Svelte renders at build time only.
 */
export const leastScript = () => ({
  name: 'least-script',
  renderChunk(this: Context, code: string) {
    if (this.environment.name !== 'client' || !asked.test(code)) return null;
    const bare = code
      .replace(asked, '')
      .replaceAll(named, '$2')
      .replaceAll('__vitePreload(', '(')
      .replaceAll(', __VITE_PRELOAD__)', ')()');
    if (/__vite_?preload/i.test(bare))
      throw new Error(`A part is fetched in a way unknown here:\n${bare}`);
    return { code: bare, map: null };
  },
  generateBundle(this: Context, _options: unknown, bundle: Record<string, Chunk>) {
    if (this.environment.name !== 'client') return;
    for (const [file, { type, name, isEntry, facadeModuleId }] of Object.entries(bundle)) {
      const needless =
        name === stylesFirst.name || (isEntry && facadeModuleId?.includes('/@astrojs/svelte/'));
      if (type === 'chunk' && needless) Reflect.deleteProperty(bundle, file);
    }
  },
});
