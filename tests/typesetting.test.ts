import type { Root } from 'hast';
import { describe, expect, it } from 'vitest';
import { spelt } from '../src/formula/notation/spelt.ts';
import { glued } from '../src/site/fine-type.ts';
import { leastScript } from '../src/site/least-script.ts';
import { maths, workedMaths } from '../src/site/maths.ts';
import { termsTogether } from '../src/site/terms-together.ts';

const THIN = '<mspace width="0.1667em"></mspace>';

describe('maths', () => {
  it('sets a logarithm’s base against its name, and the space after both', () => {
    const set = maths(String.raw`\log_2\frac{a}{b}`);
    expect(set).toMatch(/<mi>log<\/mi><mo>\u2061<\/mo><\/mrow><mn>2<\/mn><\/msub>/);
    expect(set).toContain(`<mn>2</mn></msub>${THIN}<mfrac>`);
  });

  it('parts a function’s name from the reader’s number', () => {
    expect(workedMaths(String.raw`1 - \cos\val{a}`, { a: '8.00°' })).toContain(
      `<mi>cos</mi><mo>\u2061</mo>${THIN}<mn data-val="a">8.00°</mn>`,
    );
  });
});

describe('prose', () => {
  it('keeps numbers with their units, sizes whole and film speeds together', () => {
    expect(glued('85 mm on 36 × 24 mm at ISO 100, then 4 stops; 2 lenses, ISO speed')).toBe(
      '85\u00a0mm on 36\u00a0×\u00a024\u00a0mm at ISO\u00a0100, then 4\u00a0stops; 2 lenses, ISO speed',
    );
  });

  it('calls things by their label, and by their name where they have none', () => {
    expect(spelt({ name: 'flash t05', label: 'flash t0.5' })).toBe('flash t0.5');
    expect(spelt({ name: 'metered EV' })).toBe('metered EV');
  });

  it('keeps a term and the mark after it on one line, and leaves other words alone', () => {
    const term = (): unknown => ({
      type: 'mdxJsxTextElement',
      name: 'Term',
      attributes: [],
      children: [],
    });
    const text = (value: string): unknown => ({ type: 'text', value });
    const children = [text('nearer '), term(), text(', the'), term(), text(' and')];
    const tree = { type: 'root', children: [{ type: 'element', tagName: 'p', children }] };
    termsTogether()(tree as Root);
    const shown = tree.children[0]?.children.map((node) => JSON.stringify(node));
    expect(shown).toHaveLength(5);
    expect(shown?.[1]).toMatch(/"together".*"Term".*"value":","/);
    expect(shown?.[2]).toBe('{"type":"text","value":" the"}');
    expect(shown?.[4]).toBe('{"type":"text","value":" and"}');
  });

  it('keeps a symbol and the comma after it on one line', () => {
    const symbol = { type: 'element', tagName: 'math', properties: {}, children: [] };
    const children = [symbol, { type: 'text', value: ', in light' }];
    const tree = { type: 'root', children: [{ type: 'element', tagName: 'p', children }] };
    termsTogether()(tree as unknown as Root);
    expect(tree.children[0]?.children.map((node) => JSON.stringify(node))).toEqual([
      expect.stringMatching(/"together".*"math".*"value":","/),
      '{"type":"text","value":" in light"}',
    ]);
  });
});

describe('the least script', () => {
  const plugin = leastScript();
  const client = { environment: { name: 'client' } };
  const server = { environment: { name: 'ssr' } };

  it('fetches parts without looking for styles, for readers only', () => {
    const built = [
      'import { a as live } from "./plate.js";',
      'import { st as __vitePreload } from "./styles-first.js";',
      'const one = () => __vitePreload(() => import("./ticks.js"), __VITE_PRELOAD__);',
      'const two = () => __vitePreload(async () => {',
      '  const { load, copy } = await import("./links.js");',
      '  return { load, copy };',
      '}, __VITE_PRELOAD__).then(({ load }) => load());',
      '',
    ].join('\n');
    expect(plugin.renderChunk.call(client, built)?.code).toBe(
      [
        'import { a as live } from "./plate.js";',
        'const one = () => (() => import("./ticks.js"))();',
        'const two = () => import("./links.js").then(({ load }) => load());',
        '',
      ].join('\n'),
    );
    expect(plugin.renderChunk.call(server, built)).toBeNull();
    expect(plugin.renderChunk.call(client, 'const none = 1;')).toBeNull();
    expect(() => plugin.renderChunk.call(client, `${built}part(__VITE_PRELOAD__)`)).toThrow(
      /unknown/,
    );
  });

  it('drops Svelte’s start-up script, the file for styles, and nothing else', () => {
    const bundle = (): Parameters<typeof plugin.generateBundle>[1] => ({
      'client.svelte.js': {
        type: 'chunk',
        isEntry: true,
        facadeModuleId: '/node_modules/@astrojs/svelte/dist/client.svelte.js',
      },
      'styles-first.js': { type: 'chunk', name: 'styles-first' },
      'plate.js': { type: 'chunk', isEntry: false, facadeModuleId: null },
      'plate.css': { type: 'asset' },
    });
    const [sent, rendered] = [bundle(), bundle()];
    plugin.generateBundle.call(client, {}, sent);
    plugin.generateBundle.call(server, {}, rendered);
    expect(Object.keys(sent)).toEqual(['plate.js', 'plate.css']);
    expect(Object.keys(rendered)).toHaveLength(4);
  });
});
