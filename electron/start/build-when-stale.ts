import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** Something that is built from sources: what it is called, its sources, how, and a file that is there once it is built. */
export interface Built {
  readonly name: string;
  readonly sources: readonly string[];
  readonly result: string;
  readonly build: () => Promise<void>;
}

/**
 * Builds what is missing or was built from other sources than there are now, by their digest; says so before it does. A build that breaks
 * off leaves no note behind, so the next start builds again.
 */
export async function buildWhenStale(project: string, built: Built, say: (line: string) => void): Promise<void> {
  const note = path.join(project, 'dist', `${built.name}.built-from`);
  const digest = digestOf(project, built.sources);
  if (existsSync(path.join(project, built.result)) && noted(note) === digest) return;
  say(`Building the ${built.name}. This is done again only when the program has changed.`);
  rmSync(note, { force: true });
  await built.build();
  mkdirSync(path.dirname(note), { recursive: true });
  writeFileSync(note, digest);
}

function noted(note: string): string | null {
  return existsSync(note) ? readFileSync(note, 'utf8') : null;
}

/** One digest of the names and contents of all files under the sources. */
export function digestOf(project: string, sources: readonly string[]): string {
  const hash = createHash('sha256');
  for (const file of sources.flatMap((source) => filesUnder(project, source)).sort()) {
    const text = readFileSync(path.join(project, file));
    hash.update(`${file}\0${text.length}\0`).update(text);
  }
  return hash.digest('hex');
}

function filesUnder(project: string, source: string): string[] {
  const place = path.join(project, source);
  if (!existsSync(place)) return [];
  if (statSync(place).isFile()) return [source];
  return readdirSync(place, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => path.relative(project, path.join(entry.parentPath, entry.name)));
}
