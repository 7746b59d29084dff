import { unified } from '@astrojs/markdown-remark';
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig } from 'astro/config';
import { leanRecords } from './src/site/lean-records.ts';
import { leastScript, stylesFirst } from './src/site/least-script.ts';
import { rehypePlugins, remarkPlugins } from './src/site/markdown-plugins.ts';
import { offlineCopy } from './src/site/offline/copy.ts';

// Where the site will live. Both may stay unset: it then works at the root of any host.
const base = process.env['SBN_BASE'] || '/';
const site = process.env['SBN_SITE'];

const everyPlate = new RegExp(
  [
    'src/formula/(?!solve|evaluate)',
    'src/widgets/parts/(?!ask|links|custom|read-link|handle|kit)',
    'src/drawing/(pen|dimension|scale|clip|camera)',
    // In the form that plates are sent: the reader’s own table fetches whole records.
    'src/optics/(harbour|lens/(thin-lens|frame|inputs|measured-from))\\.ts\\?lean',
    'shared/tables/(harbour|formats).*\\?lean',
  ].join('|'),
);

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
    plugins: [leanRecords(), leastScript()],
    build: {
      assetsInlineLimit: 0,
      // One sheet for the whole site, fetched once: in parts, a plate’s page waited for eight before it showed a word.
      cssCodeSplit: false,
      modulePreload: false,
      rolldownOptions: {
        // Astro marks every MDX file with a directive of its own, and the bundler would warn of each.
        checks: { moduleLevelDirective: false },
        // What every plate needs is one file, fetched once for the whole site; so is what every page needs.
        output: {
          codeSplitting: {
            groups: [
              stylesFirst,
              { name: 'plate', test: everyPlate },
              // Fetched together, or every plate would have to say what the one needs of the other.
              { name: 'links', test: /src\/widgets\/parts\/(links|read-link)\.ts/ },
              { name: 'kept', test: /src\/site\/(kept|storage)\.ts/ },
            ],
          },
        },
      },
    },
  },
  integrations: [mdx(), svelte(), offlineCopy()],
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
        "form-action 'self'",
      ],
    },
  },
});
