import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const STAMP = ['node_modules', '.installed-from'];
/** npm writes this last, so a broken-off installation does not have it. */
const RECORD = ['node_modules', '.package-lock.json'];

/**
 * Whether node_modules holds what the lock file asks for: by our stamp, or, where npm was run by hand and left
 * no stamp, by npm's own record of what it installed.
 */
export function isInstalled(root) {
  const record = readOrNull(root, RECORD);
  if (record === null) return false;
  const lock = readOrNull(root, ['package-lock.json']) ?? '';
  if (readOrNull(root, STAMP)?.trim() === hash(lock)) return true;
  if (!recordMeetsLock(record, lock)) return false;
  stampInstalled(root);
  return true;
}

/** Notes which lock file node_modules was installed from. */
export function stampInstalled(root) {
  writeFileSync(path.join(root, ...STAMP), `${hash(readOrNull(root, ['package-lock.json']) ?? '')}\n`);
}

/** Every package the lock asks for on every machine stands in npm's record at the same version. */
export function recordMeetsLock(record, lock) {
  try {
    const there = JSON.parse(record).packages;
    return Object.entries(JSON.parse(lock).packages).every(
      ([place, wanted]) => place === '' || wanted.optional === true || there[place]?.version === wanted.version,
    );
  } catch {
    return false;
  }
}

function readOrNull(root, parts) {
  try {
    return readFileSync(path.join(root, ...parts), 'utf8');
  } catch {
    return null;
  }
}

function hash(text) {
  return createHash('sha256').update(text).digest('hex');
}
