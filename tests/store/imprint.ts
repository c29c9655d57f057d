import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Every file of a folder with its digest, time and permissions: what must not change where nothing is touched. */
export function imprint(folder: string): Readonly<Record<string, string>> {
  const names = ['.', ...readdirSync(folder, { recursive: true, encoding: 'utf8' })].sort();
  return Object.fromEntries(names.map((name) => [name, imprintOf(join(folder, name))]));
}

function imprintOf(path: string): string {
  const { mode, mtimeMs } = statSync(path);
  const digest = statSync(path).isFile() ? createHash('sha256').update(readFileSync(path)).digest('hex') : 'folder';
  return `${digest} ${mtimeMs} ${mode.toString(8)}`;
}
