import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { packagesAskedFor, withTheirNeeds } from '../../electron/start/packaging/shipped-packages.ts';
import { goesOut } from '../../electron/start/packaging/stage-package.ts';

const root = mkdtempSync(path.join(os.tmpdir(), 'shipped-'));
afterAll(() => rmSync(root, { recursive: true }));

function write(file: string, text: string): void {
  mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
  writeFileSync(path.join(root, file), text);
}
const lay = (folder: string, manifest: object) => write(path.join(folder, 'package.json'), JSON.stringify({ version: '1.0.0', ...manifest }));

lay('', { dependencies: { first: '1', '@a/second': '1', lost: '1' } });
lay('node_modules/first', { dependencies: { shared: '1', '@types/none': '1' }, optionalDependencies: { 'for-another-machine': '1', 'for-this-machine': '1' } });
lay('node_modules/first/node_modules/shared', { version: '2.0.0' });
lay('node_modules/shared', { dependencies: { first: '1' } });
lay('node_modules/@a/second', { dependencies: { shared: '1' } });
lay('node_modules/for-this-machine', {});
lay('node_modules/lost', { dependencies: { nowhere: '1' } });
lay('node_modules/unnamed', {});
write('main/a.js', 'import { x } from "first/deep";\nimport "@a/second";\nimport { app } from "electron";\nimport fs from "node:fs";\nimport path from "path";\nimport "./b.js";\nconst text = { from: "nothing" };\nconst said = `from "words"`;');
write('main/b.js', 'const a = await import("third");\nconst b = createRequire(import.meta.url)("fourth");\nconst c = createRequire(import.meta.url).resolve("@b/fifth/package.json");');

test('what bundles ask for, however they do, without what Node and Electron bring', () => {
  expect(packagesAskedFor(path.join(root, 'main'))).toEqual(['@a/second', '@b/fifth', 'first', 'fourth', 'third']);
});

describe('with what they need in turn', () => {
  test('each is found as Node finds it, and optional parts only where they are there', () => {
    expect(withTheirNeeds(root, ['first', '@a/second']).map(({ folder, version }) => `${folder} ${version}`)).toEqual([
      'node_modules/@a/second 1.0.0', 'node_modules/first 1.0.0', 'node_modules/first/node_modules/shared 2.0.0', 'node_modules/for-this-machine 1.0.0', 'node_modules/shared 1.0.0',
    ]);
  });

  test('one that the project does not name, or that is not installed, is told by name', () => {
    expect(() => withTheirNeeds(root, ['unnamed'])).toThrow('The bundle asks for "unnamed"');
    expect(() => withTheirNeeds(root, ['lost'])).toThrow('"nowhere", which node_modules/lost needs, is not installed.');
  });
});

test.each([
  ['zod', 'v4/core/index.js', true], ['zod', 'src/v4/index.js', false], ['zod', 'LICENSE', true], ['any', 'LICENSE.md', true], ['any', 'README.md', false], ['any', 'lib/a.d.ts', false], ['any', 'lib/a.js.map', false],
  ['any', 'test/a.js', false], ['any', 'latest/a.js', true], ['better-sqlite3', 'prebuilds', true], ['better-sqlite3', 'prebuilds/linux-x64.node', true], ['better-sqlite3', 'prebuilds/linuxmusl-x64.node', true],
  ['better-sqlite3', 'prebuilds/linux-arm64.node', false], ['better-sqlite3', 'prebuilds/win32-x64.node', false], ['better-sqlite3', 'deps/sqlite3/sqlite3.c', false], ['@expo-google-fonts/source-sans-3', '400Regular/SourceSans3_400Regular.ttf', true],
])('%s: %s goes out to Linux on x64: %s', (name, file, expected) => expect(goesOut(name, file, { platform: 'linux', arch: 'x64' })).toBe(expected));
