import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * How long keeping many papers takes, and in how much memory, against `sha256sum`, `sha512sum` and `cp` of the same bytes in the same run:
 * `node tests/bench/paper-times.ts [papers] [bytes of each]`. Prints; it judges nothing.
 */
const [papers = 1000, bytes = 1_000_000] = process.argv.slice(2).map(Number);
const PROGRAM = fileURLToPath(new URL('../../electron/cli/trunnion.ts', import.meta.url));
const TOP = 'process.on("exit", () => process.stderr.write(`resident ${process.resourceUsage().maxRSS}\\n`));';
const folder = mkdtempSync(path.join(os.tmpdir(), 'bench-papers-'));

try {
  const [from, household] = [path.join(folder, 'from'), path.join(folder, 'household')];
  mkdirSync(from);
  const files = Array.from({ length: papers }, (_, n) => path.join(from, `${String(n).padStart(5, '0')}.bin`));
  for (const file of files) writeFileSync(file, randomBytes(bytes));
  const start = JSON.stringify({ operation: 'household.start', request: { name: 'Bench', currency: 'EUR' } });
  timed('start', process.execPath, [PROGRAM, 'enter', '-', '--household', household], start);
  const reference = timed('reference', 'sh', ['-c', 'sha256sum "$1"/* && sha512sum "$1"/* && cp -r "$1" "$2"', 'sh', from, path.join(folder, 'copy')]);
  const kept = timed('keeping', process.execPath, ['--import', `data:text/javascript,${encodeURIComponent(TOP)}`, PROGRAM, 'papers', from, '--household', household]);
  const resident = Number(/^resident (\d+)$/m.exec(kept.said)?.[1]) / 1000;
  if (!kept.out.includes(`Kept ${papers},`)) throw new Error(`not all were kept: ${kept.out.slice(-200)}`);
  console.log(`${papers} papers of ${bytes / 1e6} MB: kept in ${kept.seconds.toFixed(1)} s, ${(kept.seconds / reference.seconds).toFixed(2)} times sha256sum, sha512sum and cp (${reference.seconds.toFixed(1)} s); ${resident.toFixed(0)} MB resident`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Runs a program to its end and takes the time; one that fails ends the bench. */
function timed(what: string, program: string, words: readonly string[], input = ''): { readonly seconds: number; readonly out: string; readonly said: string } {
  const started = performance.now();
  const ran = spawnSync(program, [...words], { input, encoding: 'utf8', maxBuffer: 100_000_000 });
  if (ran.status !== 0) throw new Error(`${what} failed: ${ran.stderr.slice(-500)}`);
  return { seconds: (performance.now() - started) / 1000, out: ran.stdout, said: ran.stderr };
}
