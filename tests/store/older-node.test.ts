import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, test, type TestContext } from 'vitest';
import { temporaryFolder } from '../host/open-test-host.ts';

// Source: the store's library needs Node 22 and ends an older one without a word (seen): it must not be loaded there at all.
const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const LEAST_NODE = 22;

/** A Node of this machine that is too old for the store, or null. */
function olderNode(): string | null {
  const places = (process.env['PATH'] ?? '').split(delimiter).filter((place) => !place.includes('node_modules'));
  const nodes = places.map((place) => join(place, 'node')).filter((path) => existsSync(path));
  return nodes.find((path) => Number(spawnSync(path, ['-p', 'parseInt(process.versions.node, 10)'], { encoding: 'utf8' }).stdout) < LEAST_NODE) ?? null;
}

/** Copies a file and all it imports of ours as plain JavaScript, for a Node that knows no types. */
function copyAsJavaScript(file: string, to: string, done: Set<string> = new Set()): void {
  if (done.has(file)) return;
  done.add(file);
  const text = readFileSync(file, 'utf8');
  const target = join(to, relative(ROOT, file)).replace(/\.ts$/, '.js');
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, file.endsWith('.ts') ? plain(text) : text);
  for (const found of text.matchAll(/(?:from|import)\s*\(?'(\.[^']+)'/g)) copyAsJavaScript(resolve(dirname(file), found[1] ?? ''), to, done);
}

function plain(text: string): string {
  const { outputText } = ts.transpileModule(text, { compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022, verbatimModuleSyntax: true, rewriteRelativeImportExtensions: true } });
  return outputText;
}

/** Runs a module of ours, with all it imports, on the older Node; the script stands beside it. */
function onOlderNode(context: TestContext, file: string, script: string, ...words: readonly string[]) {
  const node = olderNode();
  if (node === null) context.skip('no Node older than 22 on this machine');
  const folder = temporaryFolder();
  copyAsJavaScript(join(ROOT, file), folder);
  writeFileSync(join(folder, 'package.json'), '{"type": "module"}');
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  writeFileSync(join(folder, 'script.js'), script);
  const before = readdirSync(folder);
  const { status, signal, stdout, stderr } = spawnSync(node, ['script.js', ...words], { cwd: folder, encoding: 'utf8' });
  return { status, signal, answer: JSON.parse(stdout === '' ? 'null' : stdout) as unknown, said: stderr, made: readdirSync(folder).filter((name) => !before.includes(name)) };
}

const REFUSAL = { code: 'node-too-old', values: { found: expect.stringMatching(/^\d+\./) as string, needed: LEAST_NODE } };

test('an older Node is refused by the store, and nothing is made', (context) => {
  const script = "import { openStore } from './electron/store/open-store.js'; console.log(JSON.stringify(openStore('household.sqlite', { backUp() {} })));";
  expect(onOlderNode(context, 'electron/store/open-store.ts', script)).toEqual({ status: 0, signal: null, answer: { ok: false, refusal: REFUSAL }, said: '', made: [] });
});

test('an older Node can load the whole of the command line, and is refused with a sentence when it opens a household', (context) => {
  const ran = onOlderNode(context, 'electron/cli/trunnion.ts', "import './electron/cli/trunnion.js';", 'due', '--household', 'household', '--json');
  expect(ran).toMatchObject({ status: 1, signal: null, answer: { refused: REFUSAL }, made: [] });
  expect(ran.said).toMatch(/^This Node \(\d[\d.]+\) is too old to open a household: .*\(node-too-old\)\n$/);
});
