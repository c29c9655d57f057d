import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { extractAll, listPackage } from '@electron/asar';
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { bundleWindow, PROJECT } from '../../electron/start/bundle.ts';
import { makePackage } from '../../electron/start/packaging/make-package.ts';
import { ABOUT, FUSES } from '../../electron/start/packaging/package-config.ts';
import { layOutAppImageTools, layOutElectron, layOutFpm, layOutGzip } from './electron-distribution.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'package-'));
const made = path.join(folder, 'out', 'made');
const program = path.join(made, 'linux-unpacked');
const archive = path.join(program, 'resources', 'app.asar');
const beside = path.join(program, 'resources', 'app.asar.unpacked');
let files: string[] = [];
let inside: string[] = [];

// With a stand-in for Electron's distribution: it shows what the packager makes of this program, and nothing of how Electron runs it.
beforeAll(async () => {
  const built = path.join(folder, 'dist');
  await bundleWindow(built);
  cpSync(path.join(PROJECT, 'dist', 'renderer'), path.join(built, 'renderer'), { recursive: true });
  mkdirSync(path.join(folder, 'electron'));
  layOutElectron(path.join(folder, 'electron'));
  vi.stubEnv('ELECTRON_BUILDER_7ZIP_PATH', layOutGzip(path.join(folder, '7za')));
  vi.stubEnv('CUSTOM_FPM_PATH', layOutFpm(path.join(folder, 'fpm'), path.join(folder, 'fpm-asked')));
  vi.stubEnv('APPIMAGE_TOOLS_PATH', layOutAppImageTools(path.join(folder, 'tools'), path.join(folder, 'appimage')));
  files = await makePackage({ project: PROJECT, built, out: path.join(folder, 'out'), electronDist: path.join(folder, 'electron'), kinds: [] });
  inside = listPackage(archive, { isPack: false }).map((file) => file.replace(/^\//, ''));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the packages', () => {
  test('are of the kinds that the settings name', () => {
    expect(files.map((file) => path.basename(file).replace(/^trunnion-\d+\.\d+\.\d+-/, '')).sort()).toEqual(['linux-amd64.deb', 'linux-x64.tar.gz', 'linux-x86_64.AppImage']);
  });

  test('a deb is asked for with our name, somebody to write to and the whole folder', () => {
    const asked = readFileSync(path.join(folder, 'fpm-asked'), 'utf8').split('\n');
    const after = (word: string) => asked[asked.indexOf(word) + 1];
    expect([after('-t'), after('--name'), after('--license'), after('--maintainer'), after('--architecture')]).toEqual(['deb', 'trunnion', 'MIT', `${ABOUT.author.name} <${ABOUT.author.email}>`, 'amd64']);
    expect(asked).toContain(`${program}/=/opt/Trunnion`);
    expect(asked.filter((word) => /^.*\.desktop=\/usr\/share\/applications\/trunnion\.desktop$/.test(word)).length).toBe(1);
  });

  test('an AppImage holds the same program, and its entry in the menu does not ask to leave out the sandbox', () => {
    const image = path.join(folder, 'appimage');
    expect(readFileSync(path.join(image, 'resources', 'app.asar')).equals(readFileSync(archive))).toBe(true);
    expect(readFileSync(path.join(image, 'trunnion.desktop'), 'utf8')).toMatch(/^Exec=AppRun(?!.*no-sandbox).*$/m);
  });

  test('the archive holds what the folder holds, under one name', () => {
    const file = files.find((one) => one.endsWith('.tar.gz')) ?? '';
    // A deb's own profile came into the folder afterwards. Files begin with a dash; a folder of a long name may end without its slash.
    const listed = execFileSync('tar', ['-tvzf', file], { encoding: 'utf8', maxBuffer: 1e8 }).split('\n').filter((line) => line.startsWith('-'));
    const top = path.basename(file, '.tar.gz');
    const inFolder = readdirSync(program, { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).map((one) => path.join(top, path.relative(program, path.join(one.parentPath, one.name)))).filter((one) => !one.endsWith('/apparmor-profile'));
    expect(listed.map((line) => line.slice(line.indexOf(`${top}/`))).sort()).toEqual(inFolder.sort());
  });

  test('the program has our name, Electron’s licences beside it and those of its parts where the menu looks for them', () => {
    expect(readdirSync(program)).toEqual(expect.arrayContaining(['trunnion', 'LICENSE.electron.txt', 'LICENSES.chromium.html']));
    expect(readFileSync(path.join(program, 'resources', 'licences.txt'), 'utf8')).toMatch(/^Trunnion holds the parts named below/);
    expect(readdirSync(path.join(program, 'locales')).sort()).toEqual(['en-GB.pak', 'en-US.pak']);
  });
});

describe('inside the archive', () => {
  test('there is what the program needs', () => {
    for (const file of ['package.json', 'dist/main/main.js', 'dist/preload/preload.cjs', 'dist/renderer/index.html', 'migrations/0010_keep_the_journal_and_what_stands.sql']) expect(inside).toContain(file);
    expect(new Set(inside.map((file) => file.split('/')[0]))).toEqual(new Set(['package.json', 'dist', 'migrations', 'node_modules']));
  });

  test.each([
    ['tests', /(^|\/)tests?(\/|$)/], ['sources and maps', /\.(tsx?|map)$/], ['data of a household', /\.(sqlite(-wal|-shm)?|db)$|(^|\/)(household|papers|backups)(\/|$)/],
    ['what is for developing', /^node_modules\/(electron|electron-builder|vite|vitest|typescript|eslint|@types|playwright-core|spdx-license-list|node)(\/|$)/],
    ['what is in the page already', /^node_modules\/(react|react-dom|@mantine|@tanstack|@fontsource|wouter)(\/|$)/],
    ['sources in C', /\.(c|cc|cpp|hpp|gyp)$/],
  ])('there are no %s', (_what, pattern) => {
    expect(inside.filter((file) => pattern.test(file))).toEqual([]);
  });

  test('what the system and the threads load lies beside it', () => {
    const native = readdirSync(beside, { recursive: true, encoding: 'utf8' });
    expect(native.filter((file) => /\.wasm$/.test(file)).map((file) => path.basename(file)).sort()).toEqual(['highs.wasm', 'pdfium.wasm']);
    expect(native.filter((file) => /-worker\.js$/.test(file)).sort()).toEqual(inside.filter((file) => /-worker\.js$/.test(file)).sort());
    expect(native.filter((file) => file.endsWith('.node')).sort()).toEqual(inside.filter((file) => file.endsWith('.node')).sort());
    expect(native.some((file) => file.endsWith('linux-x64.node')) && native.some((file) => file.includes('libvips-cpp.so'))).toBe(true);
    expect(native.filter((file) => /(darwin|win32|arm64)/.test(path.basename(file)))).toEqual([]);
  });
});

test('the fuses are those of the settings', async () => {
  const { version: _version, ...wire } = (await getCurrentFuseWire(path.join(program, 'trunnion'))) as unknown as Record<string, number>;
  const names = { RunAsNode: 'runAsNode', EnableCookieEncryption: 'enableCookieEncryption', EnableNodeOptionsEnvironmentVariable: 'enableNodeOptionsEnvironmentVariable', EnableNodeCliInspectArguments: 'enableNodeCliInspectArguments', EnableEmbeddedAsarIntegrityValidation: 'enableEmbeddedAsarIntegrityValidation', OnlyLoadAppFromAsar: 'onlyLoadAppFromAsar', LoadBrowserProcessSpecificV8Snapshot: 'loadBrowserProcessSpecificV8Snapshot', GrantFileProtocolExtraPrivileges: 'grantFileProtocolExtraPrivileges' } as const;
  for (const [name, setting] of Object.entries(names)) expect([name, String.fromCharCode(wire[FuseV1Options[name as keyof typeof names]] ?? 0)]).toEqual([name, FUSES[setting] ? '1' : '0']);
});

test('the packaged program starts with nothing but what is in it, and its database, threads, drawing and pictures work', () => {
  // Outside the project, so that no library of the project's can be found; threads have the files beside the archive alone.
  const unpacked = path.join(folder, 'run', 'app.asar');
  extractAll(archive, unpacked);
  cpSync(beside, `${unpacked}.unpacked`, { recursive: true });
  for (const gone of ['node_modules/highs', 'node_modules/@hyzyla', 'dist/main/highs-worker.js', 'dist/main/pdf-worker.js', 'dist/main/plan-worker.js']) rmSync(path.join(unpacked, gone), { recursive: true });
  const said = execFileSync(process.execPath, [path.join(PROJECT, 'tests/start/run-packaged-main.ts'), unpacked, path.join(folder, 'household')], { encoding: 'utf8', cwd: folder, env: { PATH: '/usr/bin', HOME: folder } });
  const asked = ['sample.open', 'order.propose', 'plan.propose', 'calendar.write', 'pack.preview', 'pack.preview-page', 'webp', 'sample.leave'];
  expect(JSON.parse(said)).toEqual(Object.fromEntries(asked.map((name) => [name, true])));
});

test('what cannot be packaged is said, and ends with 1', () => {
  const program = new URL('../../electron/start/packaging/package.ts', import.meta.url).pathname;
  const { status, stderr } = spawnSync(process.execPath, [program, '--electron', '/none'], { encoding: 'utf8' });
  expect([status, stderr.trimEnd().split('\n').at(-1)]).toEqual([1, expect.stringContaining('Nothing was packaged to its end:') as string]);
});
