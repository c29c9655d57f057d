import { randomBytes } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { COMMON_HEADERS, NOTHING_POLICY, pagePolicy } from './page-policy.ts';

/** Where a built page wants its nonce; the same words stand in renderer/vite.config.ts. */
const NONCE_MARK = '__NONCE_OF_THIS_LOAD__';

const MEDIA_TYPES: Readonly<Record<string, string | undefined>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.json': 'application/json',
};

/** A file of the page with the headers it goes out with. */
export interface PageAnswer {
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

/** The built page: asked by the path of an address, it gives the file of that name, or the page itself for the page's own places. */
export interface PageFiles {
  answer(urlPath: string): PageAnswer | null;
}

/**
 * Reads the built page once. Only names that were there are ever looked up, so no path leads out of the folder.
 *
 * @example pageFiles('dist/renderer').answer('/../package.json') //=> null
 */
export function pageFiles(folder: string): PageFiles {
  const files = new Map(listFiles(folder).map((name) => [`/${name.split(path.sep).join('/')}`, readFileSync(path.join(folder, name))]));
  const page = files.get('/index.html')?.toString('utf8');
  if (page === undefined) throw new Error(`no built page in ${folder}: run "npm run build"`);
  return {
    answer(urlPath) {
      if (urlPath === '/index.html' || isPlaceInPage(urlPath)) return pageAnswer(page);
      const body = files.get(urlPath);
      const type = MEDIA_TYPES[path.posix.extname(urlPath)];
      if (body === undefined || type === undefined) return null;
      return { body, headers: { ...COMMON_HEADERS, 'content-type': type, 'content-security-policy': NOTHING_POLICY } };
    },
  };
}

function listFiles(folder: string): string[] {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile()).map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)));
}

/** A screen's own address, such as /car/pip: plain words, no file. */
function isPlaceInPage(urlPath: string): boolean {
  return urlPath === '/' || (/^(\/[A-Za-z0-9_-]+)+\/?$/.test(urlPath) && !urlPath.startsWith('/assets/'));
}

/** Each load has a nonce of its own. */
function pageAnswer(page: string): PageAnswer {
  const nonce = randomBytes(16).toString('base64url');
  const headers = { ...COMMON_HEADERS, 'content-type': 'text/html; charset=utf-8', 'content-security-policy': pagePolicy(nonce) };
  return { headers, body: Buffer.from(page.replaceAll(NONCE_MARK, nonce)) };
}
