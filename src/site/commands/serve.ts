import { createReadStream, existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join, sep } from 'node:path';
import { createGzip } from 'node:zlib';
import { root } from './run.ts';

/** A running server: its address, ending in the base path, and how to stop it. */
export interface Served {
  readonly url: string;
  close(): Promise<void>;
}

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

const squeezable = /^(text\/|application\/(json|xml|manifest)|image\/svg)/;

interface HeaderRule {
  readonly pattern: RegExp;
  readonly headers: readonly (readonly [string, string])[];
}

/**
 * Reads a static host's `_headers` file: a path with `*` at the start of a line, its headers indented below.
 * Example: readHeaderRules('/*\n  X-Content-Type-Options: nosniff') has one rule for every path.
 */
export function readHeaderRules(text: string): HeaderRule[] {
  const rules: { pattern: RegExp; headers: [string, string][] }[] = [];
  for (const line of text.split('\n')) {
    if (line.trim() === '' || line.trimStart().startsWith('#')) continue;
    if (/^\s/.test(line)) {
      const [, name, value] = /^\s+([^:]+):\s*(.*?)\s*$/.exec(line) ?? [];
      if (name === undefined || value === undefined || rules.length === 0) {
        throw new Error(`_headers: expected "  Name: value" under a path, found "${line}"`);
      }
      rules.at(-1)?.headers.push([name, value]);
    } else {
      const literal = line
        .trim()
        .split('*')
        .map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'));
      rules.push({ pattern: new RegExp(`^${literal.join('.*')}$`), headers: [] });
    }
  }
  return rules;
}

/**
 * The file a static host would send for a path: the file itself, or a folder's index.html.
 * Gives undefined for what is not there or lies outside the folder.
 */
export function fileFor(folder: string, path: string): string | undefined {
  let name: string;
  try {
    name = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  const file = join(folder, name.endsWith('/') ? `${name}index.html` : name);
  const inside = file.startsWith(folder.endsWith(sep) ? folder : folder + sep);
  return inside && !file.includes('\0') && existsSync(file) && statSync(file).isFile()
    ? file
    : undefined;
}

/**
 * Serves a built site as a static host does: gzip, `_headers`, folder addresses, its own 404 page.
 * Throws: the server's error, with code EADDRINUSE when the port is taken. Port 0 takes any free one.
 * Example: const site = await serve({ folder: 'dist', base: '/sub/', port: 0 });
 */
export function serve(options: { folder: string; base?: string; port: number }): Promise<Served> {
  const { folder, base = '/', port } = options;
  const headersFile = join(folder, '_headers');
  const rules = existsSync(headersFile) ? readHeaderRules(readFileSync(headersFile, 'utf8')) : [];

  const server = createServer((request, response) => {
    answer(request, response, folder, base, rules);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, 'localhost', () => {
      const address = server.address();
      const used = typeof address === 'object' && address !== null ? address.port : port;
      resolve({
        url: `http://localhost:${used}${base}`,
        close: () =>
          new Promise((done) => {
            server.close(() => {
              done();
            });
            server.closeAllConnections();
          }),
      });
    });
  });
}

function answer(
  request: IncomingMessage,
  response: ServerResponse,
  folder: string,
  base: string,
  rules: readonly HeaderRule[],
): void {
  const { pathname, search } = new URL(request.url ?? '/', 'http://localhost');
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  if (pathname === base.slice(0, -1)) {
    response.writeHead(301, { Location: base + search }).end();
    return;
  }
  const path = pathname.startsWith(base) ? `/${pathname.slice(base.length)}` : undefined;
  const found = path === undefined || path === '/_headers' ? undefined : fileFor(folder, path);
  if (found === undefined && path !== undefined && fileFor(folder, `${path}/`) !== undefined) {
    response.writeHead(301, { Location: `${pathname}/${search}` }).end();
    return;
  }
  const file = found ?? fileFor(folder, '/404.html');
  for (const rule of rules) {
    if (!rule.pattern.test(path ?? pathname)) continue;
    for (const [name, value] of rule.headers) response.setHeader(name, value);
  }
  response.statusCode = found === undefined ? 404 : 200;
  if (file === undefined) {
    response.setHeader('Content-Type', 'text/plain; charset=utf-8').end('Nothing is here.\n');
    return;
  }
  send(request, response, file);
}

function send(request: IncomingMessage, response: ServerResponse, file: string): void {
  const type = types[extname(file)] ?? 'application/octet-stream';
  response.setHeader('Content-Type', type);
  const gzip = squeezable.test(type) && /\bgzip\b/.test(request.headers['accept-encoding'] ?? '');
  if (gzip) response.setHeader('Content-Encoding', 'gzip').setHeader('Vary', 'Accept-Encoding');
  else response.setHeader('Content-Length', statSync(file).size);
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  const bytes = createReadStream(file);
  // A reader who leaves midway is no fault of ours.
  bytes.on('error', () => response.destroy());
  if (gzip) bytes.pipe(createGzip()).pipe(response);
  else bytes.pipe(response);
}

/** Serves dist on the address that the README names, and says so. */
export async function serveForReaders(port = 4321): Promise<void> {
  const folder = join(root, 'dist');
  if (!existsSync(join(folder, 'index.html'))) {
    console.error('There is no built site yet: run npm start, which builds it first.');
    process.exitCode = 1;
    return;
  }
  const base = process.env['SBN_BASE'] || '/';
  try {
    const { url } = await serve({ folder, base, port });
    console.log(`\nSitting by Numbers is at ${url}  (Ctrl+C stops it)`);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    console.error(
      `Port ${port} is taken, perhaps by this same site in another window: look at http://localhost:${port}${base}, or stop what uses the port and try again.`,
    );
    process.exitCode = 1;
  }
}
