import { unified } from '@astrojs/markdown-remark';
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig } from 'astro/config';
import { rehypePlugins, remarkPlugins } from './src/site/markdown-plugins.ts';
import { stableIslands } from './src/site/stable-islands.ts';

// Where the site will live. Both may stay unset: it then works at the root of any host.
const base = process.env['SBN_BASE'] || '/';
const site = process.env['SBN_SITE'];

export default defineConfig({
  output: 'static',
  base,
  ...(site ? { site } : {}),
  trailingSlash: 'always',
  // The default drops line breaks between words and links as JSX does; this one loses nothing.
  compressHTML: true,
  prefetch: false,
  devToolbar: { enabled: false },
  // A widget's styles would be set inline without a hash, and the policy below would block them.
  build: { inlineStylesheets: 'never' },
  vite: {
    build: {
      assetsInlineLimit: 0,
      // Astro marks every MDX file with a directive of its own, and the bundler would warn of each.
      rolldownOptions: { checks: { moduleLevelDirective: false } },
    },
  },
  integrations: [mdx(), svelte(), stableIslands()],
  markdown: {
    syntaxHighlight: false,
    processor: unified({ remarkPlugins, rehypePlugins: rehypePlugins(base) }),
  },
  security: {
    csp: {
      directives: [
        "default-src 'none'",
        "img-src 'self'",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
      ],
    },
  },
});
