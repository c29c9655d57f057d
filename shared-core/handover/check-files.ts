import type { Sha256, VerifyEd25519 } from '../journal/digest.ts';
import { hexBytes } from '../journal/hex-text.ts';
import { utf8Bytes } from '../journal/utf8-text.ts';
import type { Message } from '../result/result.ts';
import { BAG_DECLARATION, BAG_INFO, MANIFEST, TAG_MANIFEST, manifestText } from './bag.ts';
import { verifyBag } from './bag-verify.ts';
import { readCanonical } from './canonical-file.ts';
import { byPath, fileFault, type Fault, type FoundFile } from './check-fault.ts';
import { nameDifferences } from './compare-files.ts';
import { SIGNATURE, SIGNED_CONTENTS } from './pack-files.ts';
import { shorterBy } from './payload-count.ts';
import { signedContentsSchema, type SignedContents } from './signed-contents.ts';

/** The host's cryptography that checking needs. */
export interface CheckTools {
  readonly sha256: Sha256;
  readonly verify: VerifyEd25519;
}

/** What checking a pack's files came to; `contents` is null where the signed list cannot be relied upon. */
export interface FilesReport {
  readonly faults: readonly Fault[];
  readonly warnings: readonly Message[];
  readonly contents: SignedContents | null;
}

/** The files that the signed list does not list: itself, its signature, and the manifest that lists these two. */
const OUTSIDE_THE_LIST = new Set([SIGNED_CONTENTS, SIGNATURE, TAG_MANIFEST]);

/**
 * Checks that every file is there, unchanged and under its name. Where the signed list holds, it is what all files are compared
 * with, so that a changed manifest is named itself and not every file it lists. Else the bag's own manifests are.
 */
export function checkFiles(found: readonly FoundFile[], tools: CheckTools): FilesReport {
  const files = byPath(found);
  const list = readCanonical(files, SIGNED_CONTENTS, signedContentsSchema);
  const signature = list.value === null ? list.fault : signatureFault(list.value, files, tools);
  if (list.value === null || signature !== null) return checkByManifests(found, signature);
  const faults = [...listFaults(list.value, found), ...tagManifestFaults(list.value, files)];
  const bag = faults.length === 0 ? verifyBag(found) : { faults: [], warnings: [] };
  return { faults: [...faults, ...bag.faults], warnings: bag.warnings, contents: list.value };
}

function signatureFault(contents: SignedContents, files: ReadonlyMap<string, FoundFile>, tools: CheckTools): Fault | null {
  const signature = files.get(SIGNATURE);
  if (signature === undefined) return fileFault('missing', SIGNATURE, 'fault-file-missing');
  const signed = utf8Bytes(files.get(SIGNED_CONTENTS)?.text ?? '');
  const isGood = signature.bytes !== null && tools.verify(hexBytes(contents.publicKey), signed, signature.bytes);
  return isGood ? null : fileFault('bad-signature', SIGNED_CONTENTS, 'fault-list-signature');
}

/** The bag's own manifests, and what keeps the signed list from being used unless they have named that already. */
function checkByManifests(found: readonly FoundFile[], listFault: Fault | null): FilesReport {
  const bag = verifyBag(found);
  const isNamed = bag.faults.some((fault) => fault.path === SIGNED_CONTENTS || fault.path === SIGNATURE);
  return { faults: listFault === null || isNamed ? bag.faults : [...bag.faults, listFault], warnings: bag.warnings, contents: null };
}

function listFaults(contents: SignedContents, found: readonly FoundFile[]): Fault[] {
  const digested = found
    .filter((file) => !OUTSIDE_THE_LIST.has(file.path))
    .map((file) => ({ path: file.path, size: file.size, digest: file.sha512 }));
  return nameDifferences(new Map(Object.entries(contents.files)), digested, shorterBy(byPath(found)));
}

/**
 * The one file that nothing else vouches for: it must be exactly what it would be for the signed files. Where it was made to fit
 * the files as they are now, these are named already.
 */
function tagManifestFaults(contents: SignedContents, files: ReadonlyMap<string, FoundFile>): Fault[] {
  const file = files.get(TAG_MANIFEST);
  if (file === undefined) return [fileFault('missing', TAG_MANIFEST, 'fault-file-missing')];
  const found = (path: string) => files.get(path)?.sha512 ?? '';
  const text = (digest: (path: string) => string) =>
    manifestText([...[BAG_DECLARATION, BAG_INFO, MANIFEST].map((path) => ({ path, sha512: digest(path) })), ...[SIGNED_CONTENTS, SIGNATURE].map((path) => ({ path, sha512: found(path) }))]);
  const isGood = file.text === text((path) => contents.files[path] ?? '') || file.text === text(found);
  return isGood ? [] : [fileFault('changed', TAG_MANIFEST, 'fault-file-changed')];
}
