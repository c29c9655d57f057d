import type { Message } from '../result/result.ts';
import type { ManifestLine } from './bag-lines.ts';
import { isLeftBySystem, type FoundFile } from './check-fault.ts';
import { pathLikeness } from './pack-path.ts';

/** Lines with the star that md5sum-like tools write. Source: RFC 8493 section 6 (seen): may be read, must be warned of. */
export function starWarnings(path: string, lines: readonly ManifestLine[]): Message[] {
  return lines.filter((line) => line.starred).map(({ line }) => ({ key: 'warning-starred-line', values: { path, line } }));
}

/** Names that some system takes for one and the same. */
export function likenessWarnings(found: readonly FoundFile[]): Message[] {
  const first = new Map<string, string>();
  return found.flatMap(({ path }) => {
    const like = pathLikeness(path);
    const other = first.get(like);
    if (other === undefined) first.set(like, path);
    return other === undefined ? [] : [{ key: 'warning-names-alike', values: { path, other } }];
  });
}

/** Files that systems leave in folders by themselves, and a list of files to be fetched from elsewhere. */
export function strayWarnings(found: readonly FoundFile[]): Message[] {
  return found.flatMap(({ path }) => {
    if (path === 'fetch.txt') return [{ key: 'warning-fetch-file', values: { path } }];
    return isLeftBySystem(path) ? [{ key: 'warning-system-file', values: { path } }] : [];
  });
}
