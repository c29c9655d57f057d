import type { Message } from '../result/result.ts';
import { BAG_DECLARATION, PAYLOAD } from './bag.ts';
import { readManifest, tagLines, type ManifestLines } from './bag-lines.ts';
import { likenessWarnings, starWarnings, strayWarnings } from './bag-warnings.ts';
import { byPath, fileFault, type Fault, type FoundFile } from './check-fault.ts';
import { nameDifferences, type DigestedFile, type ExpectedFiles } from './compare-files.ts';
import { packPathFault } from './pack-path.ts';
import { countFaults, shorterBy } from './payload-count.ts';

/** What checking a bag found: faults make it invalid, warnings do not. */
export interface BagReport {
  readonly faults: readonly Fault[];
  readonly warnings: readonly Message[];
}

/** The digests that can be verified, and how many hexadecimal digits they have. */
const ALGORITHMS = { sha256: 64, sha512: 128 } as const;
type Algorithm = keyof typeof ALGORITHMS;

interface Manifest extends ManifestLines {
  readonly path: string;
  readonly algorithm: Algorithm;
  readonly ofTags: boolean;
}

/**
 * Checks that files form a complete and valid bag of version 1.0, knowing nothing of how it was made.
 *
 * Source: RFC 8493 sections 2 and 3 (seen); cases of the conformance suite (seen as a tree).
 */
export function verifyBag(found: readonly FoundFile[]): BagReport {
  const files = byPath(found);
  const declaration = declarationFaults(files);
  const names = found.flatMap((file) => manifestName(file.path));
  const manifests = names.flatMap((name) => readOne(name, files));
  const warnings = [...unknownWarnings(names), ...manifests.flatMap(({ path, lines }) => starWarnings(path, lines)), ...likenessWarnings(found), ...strayWarnings(found)];
  const payload = manifests.filter((manifest) => !manifest.ofTags);
  if (payload.length === 0) return { faults: [...declaration, fileFault('missing', 'manifest-sha512.txt', 'fault-no-manifest')], warnings };
  const listed = manifests.flatMap((manifest) => [...formFaults(manifest, payload), ...fileFaults(manifest, found)]);
  const faults = [...declaration, ...listed];
  return { faults: onceEach([...faults, ...(faults.length === 0 ? countFaults(files) : [])]), warnings };
}

function declarationFaults(files: ReadonlyMap<string, FoundFile>): Fault[] {
  const file = files.get(BAG_DECLARATION);
  if (file === undefined) return [fileFault('missing', BAG_DECLARATION, 'fault-no-declaration')];
  const lines = tagLines(file.text ?? '');
  const isGood = lines.length === 2 && lines[0] === 'BagIt-Version: 1.0' && lines[1] === 'Tag-File-Character-Encoding: UTF-8';
  return isGood ? [] : [fileFault('not-a-pack', BAG_DECLARATION, 'fault-declaration')];
}

interface ManifestName {
  readonly path: string;
  readonly algorithm: string;
  readonly ofTags: boolean;
}

function manifestName(path: string): ManifestName[] {
  const parts = /^(tag)?manifest-([a-z0-9]+)\.txt$/.exec(path);
  return parts === null ? [] : [{ path, algorithm: parts[2] ?? '', ofTags: parts[1] !== undefined }];
}

function isKnown(algorithm: string): algorithm is Algorithm {
  return Object.hasOwn(ALGORITHMS, algorithm);
}

function readOne({ path, algorithm, ofTags }: ManifestName, files: ReadonlyMap<string, FoundFile>): Manifest[] {
  if (!isKnown(algorithm)) return [];
  const text = files.get(path)?.text ?? null;
  // Text that is not UTF-8 cannot be read at all; a byte order mark, which is not allowed, is no digit and spoils its line.
  const lines = text === null ? { lines: [], unreadable: [1] } : readManifest(text, ALGORITHMS[algorithm]);
  return [{ path, algorithm, ofTags, ...lines }];
}

/** Faults in what a manifest says, before any file is looked at. */
function formFaults(manifest: Manifest, payload: readonly Manifest[]): Fault[] {
  const { path, lines, unreadable, ofTags } = manifest;
  const paths = lines.map((line) => line.path);
  const twice = repeated(paths);
  const unlisted = ofTags ? payload.filter((one) => !paths.includes(one.path)) : [];
  const outside = lines.filter((line) => isOutside(line.path, ofTags));
  return [
    ...unreadable.map((line) => fileFault('not-a-pack', path, 'fault-manifest-line', { line })),
    ...twice.map((listed) => fileFault('not-a-pack', path, 'fault-listed-twice', { listed })),
    ...outside.map(({ line, path: listed }) => fileFault('not-a-pack', path, 'fault-listed-outside', { line, listed })),
    ...unlisted.map((one) => fileFault('not-a-pack', path, 'fault-manifest-unlisted', { listed: one.path })),
  ];
}

/** The three characters that a manifest encodes are allowed in its paths; those that lead out of the bag are not. */
function isOutside(path: string, ofTags: boolean): boolean {
  const fault = packPathFault(path);
  if (fault !== null && ['absolute', 'backslash', 'drive', 'home', 'step', 'empty'].includes(fault)) return true;
  return ofTags ? path.startsWith(PAYLOAD) || path.startsWith('tagmanifest-') : !path.startsWith(PAYLOAD);
}

/** A payload manifest lists every payload file; a tag manifest need not list every other file. */
function fileFaults({ lines, algorithm, ofTags }: Manifest, found: readonly FoundFile[]): Fault[] {
  const inside = lines.filter((line) => !isOutside(line.path, ofTags));
  const expected: ExpectedFiles = new Map(inside.map((line) => [line.path, line.digest]));
  const files = found.filter((file) => (ofTags ? expected.has(file.path) : file.path.startsWith(PAYLOAD)));
  const digested: DigestedFile[] = files.map((file) => ({ path: file.path, size: file.size, digest: file[algorithm] }));
  return nameDifferences(expected, digested, ofTags ? null : shorterBy(byPath(found)));
}

function repeated(paths: readonly string[]): string[] {
  const seen = new Set<string>();
  return paths.filter((path) => seen.size === seen.add(path).size);
}

function unknownWarnings(names: readonly ManifestName[]): Message[] {
  return names.filter((name) => !isKnown(name.algorithm)).map((name) => ({ key: 'warning-unknown-digest', values: { path: name.path } }));
}

function onceEach(faults: readonly Fault[]): Fault[] {
  const seen = new Set<string>();
  return faults.filter((fault) => {
    const key = JSON.stringify([fault.code, fault.path, fault.message]);
    return seen.has(key) ? false : seen.add(key) !== undefined;
  });
}
