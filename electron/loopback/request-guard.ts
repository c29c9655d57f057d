/** What of a request decides whether it comes from our own page, as it arrived. */
export interface RequestHead {
  readonly method: string;
  /** The request target: a path, or a whole address in absolute form. */
  readonly target: string;
  /** Names and values in turn, repeated headers included. */
  readonly rawHeaders: readonly string[];
}

/** A request let through, by its path and query; or the status and sentence it is turned away with. */
export type Guarded = { readonly ok: true; readonly path: string; readonly query: URLSearchParams } | { readonly ok: false; readonly status: number; readonly why: string };

const CHANGES_NOTHING = new Set(['GET', 'HEAD']);

/**
 * Lets through what a page of this very server may send: one Host header that names this server, no foreign Origin, no other
 * site behind it. A page elsewhere that makes its own name point at 127.0.0.1 still sends its own name as Host.
 *
 * Source: defence against DNS rebinding by exact Host values (Singularity's wiki, seen); 400 for none or several by RFC 9112 s3.2 (from memory).
 * @example guardRequest({ method: 'GET', target: '/', rawHeaders: ['Host', 'evil.example:3000'] }, 3000) //=> { ok: false, status: 421, ... }
 */
export function guardRequest({ method, target, rawHeaders }: RequestHead, port: number): Guarded {
  const hosts = valuesOf(rawHeaders, 'host');
  const host = (hosts[0] ?? '').toLowerCase();
  if (hosts.length !== 1) return turnAway(400, 'A request names exactly one host.');
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) return turnAway(421, 'This server does not go by that name.');
  if (!isOwnOrigin(valuesOf(rawHeaders, 'origin'), method, host)) return turnAway(403, 'Only its own page may ask this server.');
  if (!isOwnSite(valuesOf(rawHeaders, 'sec-fetch-site'))) return turnAway(403, 'Only its own page may ask this server.');
  return pathOf(target, host);
}

function valuesOf(rawHeaders: readonly string[], name: string): string[] {
  return rawHeaders.filter((_value, at) => at % 2 === 1 && rawHeaders[at - 1]?.toLowerCase() === name);
}

/** Browsers leave Origin out of plain GETs of the same origin only; what changes something must carry it. */
function isOwnOrigin(origins: readonly string[], method: string, host: string): boolean {
  if (origins.length === 0) return CHANGES_NOTHING.has(method);
  return origins.length === 1 && origins[0] === `http://${host}`;
}

/** A second look where the browser tells: `none` is a person's own opening of a link. */
function isOwnSite(sites: readonly string[]): boolean {
  return sites.every((site) => site === 'same-origin' || site === 'none');
}

/** Absolute form must name this server too; `//name` and the like are never read as an address. */
function pathOf(target: string, host: string): Guarded {
  const own = `http://${host}`;
  const path = target.toLowerCase().startsWith(`${own}/`) ? target.slice(own.length) : target;
  if (!path.startsWith('/')) return turnAway(421, 'This server does not go by that name.');
  const [before = '', ...after] = path.split('?');
  return { ok: true, path: before, query: new URLSearchParams(after.join('?')) };
}

function turnAway(status: number, why: string): Guarded {
  return { ok: false, status, why };
}
