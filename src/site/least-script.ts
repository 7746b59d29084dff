interface Context {
  readonly environment: { readonly name: string };
}

interface Chunk {
  readonly type: string;
  readonly isEntry?: boolean;
  readonly facadeModuleId?: string | null;
}

/**
 * Leaves out what the tools add to the reader's script and no page of ours asks for.
 *
 * - Parts that are fetched later come with code that first fetches their styles. They have none: styles are in the page.
 * - Svelte's own start-up script is built for islands, and there are none: Svelte renders at build time only.
 */
export const leastScript = () => ({
  name: 'least-script',
  enforce: 'pre' as const,
  load(this: Context, id: string) {
    return this.environment.name === 'client' && id === '\0vite/preload-helper.js'
      ? 'export const __vitePreload = (part) => part();'
      : null;
  },
  generateBundle(this: Context, _options: unknown, bundle: Record<string, Chunk>) {
    if (this.environment.name !== 'client') return;
    for (const [file, { type, isEntry, facadeModuleId }] of Object.entries(bundle))
      if (type === 'chunk' && isEntry && facadeModuleId?.includes('/@astrojs/svelte/'))
        Reflect.deleteProperty(bundle, file);
  },
});
