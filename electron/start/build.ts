import { rmSync } from 'node:fs';
import path from 'node:path';
import { buildWhenStale } from './build-when-stale.ts';
import { PROJECT } from './bundle.ts';
import { PAGE_BUILD, WINDOW_BUILD } from './what-is-built.ts';

const say = (line: string): void => void process.stderr.write(`${line}\n`);

// Asked for by name, everything is built anew, whether it seems needed or not.
for (const built of [PAGE_BUILD, WINDOW_BUILD]) {
  rmSync(path.join(PROJECT, built.result), { force: true });
  await buildWhenStale(PROJECT, built, say);
}
