import type { APIRoute } from 'astro';
import { href } from '../site/href.ts';
import { siteLine, siteName } from '../site/identity.ts';
import { paper } from '../site/offline/paper.ts';

const icon = (file: string, sizes: string, purpose: 'any' | 'maskable', type = 'image/png') => ({
  src: href(`/icons/${file}`),
  sizes,
  type,
  purpose,
});

/** What a system asks for to put the site among its own programs. */
export const GET: APIRoute = () =>
  new Response(
    JSON.stringify({
      id: href('/'),
      start_url: href('/'),
      scope: href('/'),
      name: siteName,
      short_name: 'Sitting',
      description: siteLine,
      lang: 'en-GB',
      dir: 'ltr',
      // With a way back where the system has one to give; some know nothing between this and a plain window.
      display: 'standalone',
      display_override: ['minimal-ui'],
      orientation: 'any',
      theme_color: paper.light,
      background_color: paper.light,
      categories: ['education', 'photo'],
      icons: [
        icon('icon.svg', 'any', 'any', 'image/svg+xml'),
        icon('icon-192.png', '192x192', 'any'),
        icon('icon-512.png', '512x512', 'any'),
        icon('maskable-192.png', '192x192', 'maskable'),
        icon('maskable-512.png', '512x512', 'maskable'),
      ],
      shortcuts: [
        { name: 'Quick tables', url: href('/tables/') },
        { name: 'Plates', url: href('/plates/') },
        { name: 'Search', url: href('/search/') },
      ],
    }),
    { headers: { 'Content-Type': 'application/manifest+json' } },
  );
