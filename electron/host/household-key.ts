import { createPrivateKey, generateKeyPairSync, randomBytes, type KeyObject } from 'node:crypto';
import { chmodSync, closeSync, fsyncSync, linkSync, lstatSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SignEd25519 } from '../../shared-core/journal/digest.ts';
import { keyFingerprint } from '../../shared-core/journal/seal.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { ed25519Signer, rawPublicKey, sha256 } from './node-digests.ts';

/** The key that a household seals with. */
export interface HouseholdKey {
  /** 32 raw bytes. */
  readonly publicKey: Uint8Array;
  /** SHA-256 of the raw public key, hexadecimal. */
  readonly fingerprint: string;
  readonly sign: SignEd25519;
}

const OWNER_ONLY = 0o600;

/** Where a household folder keeps its key. */
export function householdKeyPath(folder: string): string {
  return join(folder, 'key');
}

/**
 * The key of a household folder, made there if there is none yet: Ed25519, PKCS8 PEM, readable by its owner only. It is never
 * overwritten. Refused `key-unreadable` where a file stands there that is no such key, `key-not-saved` where none can be made.
 */
export function openHouseholdKey(folder: string): Result<HouseholdKey> {
  const path = householdKeyPath(folder);
  const found = readKey(path);
  if (found !== null) return found;
  const pair = generateKeyPairSync('ed25519');
  try {
    createOnce(path, pair.privateKey.export({ format: 'pem', type: 'pkcs8' }).toString());
  } catch (error) {
    return refuse('key-not-saved', { path, why: reason(error) });
  }
  // Read back: another process may have been first, and then its key is the household's.
  return readKey(path) ?? refuse('key-not-saved', { path, why: 'ENOENT' });
}

function readKey(path: string): Result<HouseholdKey> | null {
  try {
    if (!lstatSync(path).isFile()) return refuse('key-unreadable', { path, why: 'not a file' });
    const key = createPrivateKey(readFileSync(path));
    if (key.asymmetricKeyType !== 'ed25519') return refuse('key-unreadable', { path, why: 'not Ed25519' });
    if ((lstatSync(path).mode & 0o077) !== 0) chmodSync(path, OWNER_ONLY);
    return ok(householdKey(key));
  } catch (error) {
    return reason(error) === 'ENOENT' ? null : refuse('key-unreadable', { path, why: reason(error) });
  }
}

function householdKey(key: KeyObject): HouseholdKey {
  const publicKey = rawPublicKey(key);
  return { publicKey, fingerprint: keyFingerprint(publicKey, sha256), sign: ed25519Signer(key) };
}

/** Writes a new file whole or not at all, and never over one that is there. */
function createOnce(path: string, text: string): void {
  const draft = `${path}.${randomBytes(6).toString('hex')}.draft`;
  try {
    writeSynced(draft, text);
    linkSync(draft, path);
  } catch (error) {
    if (reason(error) === 'EEXIST') return;
    if (!['EPERM', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP'].includes(reason(error))) throw error;
    // A disk without hard links (FAT): exclusive creation is the best there is.
    writeSynced(path, text);
  } finally {
    rmSync(draft, { force: true });
  }
  syncFolderOf(path);
}

function writeSynced(path: string, text: string): void {
  const file = openSync(path, 'wx', OWNER_ONLY);
  try {
    writeFileSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Makes the new name last through a power cut; systems that cannot open a folder do it themselves. */
function syncFolderOf(path: string): void {
  if (process.platform === 'win32') return;
  const folder = openSync(join(path, '..'), 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}

function reason(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}
