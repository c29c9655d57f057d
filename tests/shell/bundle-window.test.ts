import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundleWindow } from '../../electron/start/bundle.ts';
import { operationNames } from '../../shared-core/contract/contract.ts';

// In the project, so that the bundles find the libraries.
const out = mkdtempSync(path.join(path.dirname(new URL(import.meta.url).pathname), '../../node_modules/.bundle-'));
const read = (file: string) => readFileSync(path.join(out, file), 'utf8');

beforeAll(() => bundleWindow(out));
afterAll(() => rmSync(out, { recursive: true }));

test('the preload script is one file that needs nothing but electron, with every operation by name', () => {
  expect(readdirSync(path.join(out, 'preload'))).toEqual(['preload.cjs']);
  const preload = read('preload/preload.cjs');
  expect([...preload.matchAll(/require\("([^"]+)"\)/g)].map((found) => found[1])).toEqual(['electron']);
  expect(preload).not.toMatch(/^import /m);
  for (const name of operationNames) expect(preload).toContain(`"${name}"`);
  expect(preload).not.toContain('OPERATION_NAMES');
});

test('the main program starts its threads from the bundles beside it', async () => {
  const main = readdirSync(path.join(out, 'main')).map((file) => read(`main/${file}`)).join('\n');
  const threads = [...main.matchAll(/new URL\(["']\.\/([a-z-]+-worker\.[a-z]+)["'], import\.meta\.url\.replace\(/g)].map((found) => found[1] ?? '');
  expect(threads.length).toBeGreaterThan(0);
  for (const thread of threads) {
    expect(readdirSync(path.join(out, 'main'))).toContain(thread);
    expect(read(`main/${thread}`)).not.toContain('main.js');
    // In a package a thread's file is looked for beside the archive.
    expect(main).toContain(`new URL("./${thread}", import.meta.url.replace("/app.asar/", "/app.asar.unpacked/"))`);
    const worker = new Worker(path.join(out, 'main', thread));
    await new Promise<void>((resolve, reject) => {
      worker.once('online', resolve);
      worker.once('error', reject);
    });
    await worker.terminate();
  }
});

test('no source is needed at run time', () => {
  for (const file of readdirSync(path.join(out, 'main'))) expect(read(`main/${file}`)).not.toMatch(/(from|import\()\s*["'][^"']+\.ts["']/);
});
