import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

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
  const photograph = await noise(bytes);
  for (let n = 0; n < papers; n += 1) writeFileSync(path.join(from, `${String(n).padStart(5, '0')}.jpg`), unlike(photograph));
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

/** A JPEG of about so many bytes: points without order, in three colours, take about 1.67 bytes each at quality 90. */
async function noise(size: number): Promise<Buffer> {
  const side = Math.floor(Math.sqrt(size / 1.67));
  return sharp(randomBytes(side * side * 3), { raw: { width: side, height: side, channels: 3 } }).jpeg({ quality: 90, chromaSubsampling: '4:4:4' }).toBuffer();
}

/** The same picture as another file: a comment (ITU-T T.81, marker COM) after the start of the image. */
function unlike(jpeg: Buffer): Buffer {
  return Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xfe, 0, 18]), randomBytes(16), jpeg.subarray(2)]);
}

/** Runs a program to its end and takes the time; one that fails ends the bench. */
function timed(what: string, program: string, words: readonly string[], input = ''): { readonly seconds: number; readonly out: string; readonly said: string } {
  const started = performance.now();
  const ran = spawnSync(program, [...words], { input, encoding: 'utf8', maxBuffer: 100_000_000 });
  if (ran.status !== 0) throw new Error(`${what} failed: ${ran.stderr.slice(-500)}`);
  return { seconds: (performance.now() - started) / 1000, out: ran.stdout, said: ran.stderr };
}
