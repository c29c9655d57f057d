import { PAYLOAD } from './bag.ts';
import { addedFault, fileFault, type Fault } from './check-fault.ts';

/** What a list says there should be: path to digest. */
export type ExpectedFiles = ReadonlyMap<string, string>;

/** A file found, with its digest of the list's kind. */
export interface DigestedFile {
  readonly path: string;
  readonly size: number;
  readonly digest: string;
}

/** How the files found differ from a list. */
export interface FileDifferences {
  readonly missing: readonly string[];
  readonly added: readonly DigestedFile[];
  readonly changed: readonly DigestedFile[];
}

/** What is missing from the list, not in it, or of another digest; each in the order of its own list. */
export function differences(expected: ExpectedFiles, found: readonly DigestedFile[]): FileDifferences {
  const paths = new Set(found.map((file) => file.path));
  return {
    missing: [...expected.keys()].filter((path) => !paths.has(path)),
    added: found.filter((file) => !expected.has(file.path)),
    changed: found.filter((file) => expected.has(file.path) && expected.get(file.path) !== file.digest),
  };
}

/**
 * Names each difference once: a missing file whose bytes stand under another name is `renamed`, changed files that hold each
 * other's bytes are `reordered`, a single changed file in a pack that has become smaller is `truncated`.
 *
 * `shorterBy` is by how many bytes the payload falls short of what was counted; null where nothing was counted.
 */
export function nameDifferences(expected: ExpectedFiles, found: readonly DigestedFile[], shorterBy: number | null): Fault[] {
  const { missing, added, changed } = differences(expected, found);
  const moves = pairMoves(expected, missing, added);
  const movedTo = new Set(moves.values());
  return [
    ...missing.map((path) => {
      const to = moves.get(path);
      return to === undefined ? fileFault('missing', path, 'fault-file-missing') : fileFault('renamed', path, 'fault-file-renamed', { to });
    }),
    ...added.filter((file) => !movedTo.has(file.path)).map((file) => addedFault(file.path)),
    ...changed.map((file) => nameChange(file, expected, changed, missing.length + added.length === 0 ? shorterBy : null)),
  ];
}

/** Missing path to the added path that holds its bytes; each added file serves once. */
function pairMoves(expected: ExpectedFiles, missing: readonly string[], added: readonly DigestedFile[]): Map<string, string> {
  const free = [...added];
  const moves = new Map<string, string>();
  for (const path of missing) {
    const at = free.findIndex((file) => file.digest === expected.get(path));
    const [file] = at < 0 ? [] : free.splice(at, 1);
    if (file !== undefined) moves.set(path, file.path);
  }
  return moves;
}

function nameChange(file: DigestedFile, expected: ExpectedFiles, changed: readonly DigestedFile[], shorterBy: number | null): Fault {
  const other = changed.find((one) => one.path !== file.path && expected.get(one.path) === file.digest);
  if (other !== undefined) return fileFault('reordered', file.path, 'fault-file-swapped', { other: other.path });
  if (file.size === 0) return fileFault('truncated', file.path, 'fault-file-empty');
  const isShorter = changed.length === 1 && file.path.startsWith(PAYLOAD) && shorterBy !== null && shorterBy > 0;
  if (isShorter) return fileFault('truncated', file.path, 'fault-file-shorter', { bytes: shorterBy });
  return fileFault('changed', file.path, 'fault-file-changed');
}
