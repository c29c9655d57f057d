import { describe, expect, test } from 'vitest';
import { HOUSE_RULES } from './house-rules.ts';
import { report, sourceOf, type Fault } from './source.ts';

type RuleName = keyof typeof HOUSE_RULES;
interface Row {
  rule: RuleName;
  case: string;
  files: Record<string, string>;
  /** Where the fault is, `file:line`; several where there are several. */
  at: string | string[];
}

const BRANDS = {
  'shared-core/units/distance.ts': "declare const u: unique symbol;\nexport type Metres = number & { readonly [u]: 'Metres' };\nexport const metres = (n: number) => n as Metres;",
  'shared-core/calendar/local-date.ts': "export type LocalDate = string & { readonly [d]: 'LocalDate' };",
};
const lines = (n: number) => '// a line\n'.repeat(n);
const rows = (n: number) => `export const table = [${'1,'.repeat(n)}];`;

const broken: Row[] = [
  { rule: 'imports go one way', case: 'the core imports electron', files: { 'shared-core/fleet/car.ts': "import { x } from '../../electron/main.ts';" }, at: 'shared-core/fleet/car.ts:1' },
  { rule: 'imports go one way', case: 'the core imports a type of the page', files: { 'shared-core/fleet/car.ts': "\nimport type { X } from '../../renderer/app/main.tsx';" }, at: 'shared-core/fleet/car.ts:2' },
  { rule: 'imports go one way', case: 'a stage imports a later stage', files: { 'shared-core/fleet/car.ts': "import type { W } from '../care/due-window.ts';" }, at: 'shared-core/fleet/car.ts:1' },
  { rule: 'imports go one way', case: 'a stage names a later stage in a type', files: { 'shared-core/care/a.ts': "type P = import('../parts/offer.ts').Offer;" }, at: 'shared-core/care/a.ts:1' },
  { rule: 'imports go one way', case: 'the contract imports the sample', files: { 'shared-core/contract/contract.ts': "export { s } from '../sample/household.ts';" }, at: 'shared-core/contract/contract.ts:1' },
  { rule: 'imports go one way', case: 'the core imports Node', files: { 'shared-core/journal/row.ts': "import { createHash } from 'node:crypto';" }, at: 'shared-core/journal/row.ts:1' },
  { rule: 'imports go one way', case: 'the core imports a PDF package', files: { 'shared-core/handover/pack.ts': "const p = await import('pdfkit');" }, at: 'shared-core/handover/pack.ts:1' },
  { rule: 'imports go one way', case: 'the page imports electron code', files: { 'renderer/bridge/call.ts': "import '../../electron/preload.ts';" }, at: 'renderer/bridge/call.ts:1' },
  { rule: 'imports go one way', case: 'electron imports the page', files: { 'electron/shell/window.ts': "import type { P } from '../../renderer/app/page.tsx';" }, at: 'electron/shell/window.ts:1' },
  { rule: 'imports go one way', case: 'the page reads a stage', files: { 'renderer/yard/lane.tsx': "import type { Car } from '../../shared-core/fleet/car.ts';" }, at: 'renderer/yard/lane.tsx:1' },
  { rule: 'imports go one way', case: 'the page takes a value from views', files: { 'renderer/yard/lane.tsx': "import { type A, build } from '../../shared-core/views/yard.ts';" }, at: 'renderer/yard/lane.tsx:1' },
  { rule: 'imports go one way', case: 'the page imports Node', files: { 'renderer/yard/lane.tsx': "import fs from 'node:fs';" }, at: 'renderer/yard/lane.tsx:1' },
  { rule: 'imports go one way', case: 'a screen imports another screen', files: { 'renderer/yard/lane.tsx': "import { C } from '../car/car-page.tsx';" }, at: 'renderer/yard/lane.tsx:1' },
  { rule: 'no round of imports', case: 'two files', files: { 'shared-core/care/a.ts': "import { b } from './b.ts';", 'shared-core/care/b.ts': "\nimport type { A } from './a.ts';" }, at: 'shared-core/care/b.ts:2' },
  { rule: 'no round of imports', case: 'three files, one import lazy', files: { 'electron/host/a.ts': "import './b.ts';", 'electron/host/b.ts': "await import('./c.ts');", 'electron/host/c.ts': "export * from './a.ts';" }, at: 'electron/host/c.ts:1' },
  { rule: 'no round of imports', case: 'a file that imports itself', files: { 'electron/host/a.ts': "import './a.ts';" }, at: 'electron/host/a.ts:1' },
  ...['Date.now()', 'new Date()', 'new Date', 'Date()', 'Math.random()', '[1].map(Math.random)', 'crypto.randomUUID()', 'globalThis.crypto.subtle.digest(a, b)', 'performance.now()', 'Temporal.Now.instant()'].map(
    (code): Row => ({ rule: 'the core has no clock and no chance', case: code, files: { 'shared-core/care/a.ts': `const a = 1;\nconst b = ${code};` }, at: 'shared-core/care/a.ts:2' }),
  ),
  { rule: 'units and dates are made at their door', case: 'as Metres in a later stage', files: { ...BRANDS, 'shared-core/fleet/a.ts': 'const a = 1 as Metres;' }, at: 'shared-core/fleet/a.ts:1' },
  { rule: 'units and dates are made at their door', case: 'by way of unknown, in a list, on the next line', files: { ...BRANDS, 'renderer/yard/a.tsx': 'const a = x as unknown as\n  readonly LocalDate[];' }, at: 'renderer/yard/a.tsx:2' },
  { rule: 'units and dates are made at their door', case: 'inside an object, in electron', files: { ...BRANDS, 'electron/store/a.ts': 'const a = row as { on: LocalDate };' }, at: 'electron/store/a.ts:1' },
  { rule: 'units and dates are made at their door', case: 'in angle brackets', files: { ...BRANDS, 'shared-core/fleet/a.ts': 'const a = <Metres>1;' }, at: 'shared-core/fleet/a.ts:1' },
  { rule: 'no code file over 400 lines', case: '401 lines', files: { 'shared-core/care/a.ts': lines(401) }, at: 'shared-core/care/a.ts:1' },
  { rule: 'no code file over 400 lines', case: 'a test too', files: { 'tests/store/a.test.ts': lines(401) }, at: 'tests/store/a.test.ts:1' },
  { rule: 'data is JSON', case: 'a table in YAML', files: { 'shared-core/sample/cars.yaml': 'a: 1' }, at: 'shared-core/sample/cars.yaml:1' },
  { rule: 'data is JSON', case: 'a long table in code', files: { 'shared-core/units/currencies.ts': rows(81) }, at: 'shared-core/units/currencies.ts:1' },
  { rule: 'no barrels', case: 'index.ts', files: { 'shared-core/care/index.ts': '' }, at: 'shared-core/care/index.ts:1' },
  { rule: 'no barrels', case: 'a file that only hands on', files: { 'shared-core/care/all.ts': "export { a } from './a.ts';" }, at: 'shared-core/care/all.ts:1' },
  { rule: 'no barrels', case: 'export *', files: { 'electron/store/all.ts': "export const b = 1;\nexport * from './a.ts';" }, at: 'electron/store/all.ts:2' },
  ...['shared-core/care/date-utils.ts', 'electron/host/helpers.ts', 'renderer/ui/common/button.tsx', 'electron/store/store-manager.ts', 'tests/misc/a.test.ts', 'shared-core/care/DueWindow.ts', 'shared-core/care/due_window.ts', 'migrations/0015_odd_step.sql', 'migrations/10_short.sql'].map(
    (file): Row => ({ rule: 'files are named by the domain', case: file, files: { [file]: '' }, at: `${file}:1` }),
  ),
  ...['src/main.ts', 'shared-core/odometer/a.ts', 'electron/printing/a.ts', 'renderer/dashboard/a.tsx', 'tests/unit/a.test.ts', 'migrations/old/0010_a.sql'].map(
    (file): Row => ({ rule: 'no folder outside the plan', case: file, files: { [file]: '' }, at: `${file}:1` }),
  ),
  { rule: 'one door to the page, the database and the solver', case: 'ipcMain elsewhere', files: { 'electron/main.ts': "import { app, ipcMain } from 'electron';" }, at: 'electron/main.ts:1' },
  { rule: 'one door to the page, the database and the solver', case: 'ipcMain by way of the whole', files: { 'electron/shell/window.ts': "import * as electron from 'electron';" }, at: ['electron/shell/window.ts:1', 'electron/shell/window.ts:1'] },
  { rule: 'one door to the page, the database and the solver', case: 'ipcMain renamed', files: { 'electron/shell/window.ts': "import { ipcMain as m } from 'electron';" }, at: 'electron/shell/window.ts:1' },
  { rule: 'one door to the page, the database and the solver', case: 'ipcRenderer elsewhere', files: { 'electron/shell/window.ts': "import { ipcRenderer } from 'electron';" }, at: 'electron/shell/window.ts:1' },
  { rule: 'one door to the page, the database and the solver', case: 'the database elsewhere', files: { 'electron/host/a.ts': "import Database from 'better-sqlite3';" }, at: 'electron/host/a.ts:1' },
  { rule: 'one door to the page, the database and the solver', case: 'the solver elsewhere', files: { 'electron/host/a.ts': "const h = await import('highs');" }, at: 'electron/host/a.ts:1' },
  ...["'SELECT * FROM car'", '`\n    INSERT INTO reading (car) VALUES (?)`', '`UPDATE car SET name = ${name}`', "'PRAGMA user_version'", '`-- why\n  CREATE TABLE car (id TEXT)`', "'WITH late AS (SELECT 1) SELECT * FROM late'"].map(
    (sql): Row => ({ rule: 'SQL only in the store', case: sql, files: { 'electron/host/a.ts': `const a = 1;\nconst sql = ${sql};` }, at: 'electron/host/a.ts:2' }),
  ),
  ...["shell.openExternal(url)", "const { openExternal: go } = shell", "shell['openExternal'](url)", "contents.executeJavaScript('1')", "const w = { enableBlinkFeatures: 'A' }", "document.createElement('webview')", 'const w = { nodeIntegration: true }', 'const w = { sandbox: on }', "const w = { 'contextIsolation': false }", 'const w = { navigateOnDragDrop: true }', "app.commandLine.appendSwitch('no-sandbox')"].map(
    (code): Row => ({ rule: 'no way round the window’s guards', case: code, files: { 'electron/shell/window.ts': `const a = 1;\n${code};` }, at: 'electron/shell/window.ts:2' }),
  ),
  { rule: 'no way round the window’s guards', case: 'a page within the page', files: { 'renderer/yard/a.tsx': 'const a = <webview src="a" />;' }, at: 'renderer/yard/a.tsx:1' },
  { rule: 'no way round the window’s guards', case: 'a page within the page, as a file', files: { 'renderer/index.html': '<body><WebView src="a"></body>' }, at: 'renderer/index.html:1' },
  { rule: 'a verifier shares no code with its solver', case: 'the verifier asks the solver', files: { 'shared-core/sessions/plan-verify.ts': "\nimport { solvePlan } from './plan-solve.ts';", 'shared-core/sessions/plan-solve.ts': '' }, at: 'shared-core/sessions/plan-verify.ts:2' },
  { rule: 'a verifier shares no code with its solver', case: 'both reckon with one file, each from afar', files: { 'shared-core/sessions/plan-verify.ts': "import './plan-verify-money.ts';", 'shared-core/sessions/plan-verify-money.ts': "export { price } from './plan-price.ts';", 'shared-core/sessions/plan-solve.ts': "import './plan-model.ts';", 'shared-core/sessions/plan-model.ts': "const p = await import('./plan-price.ts');", 'shared-core/sessions/plan-price.ts': '' }, at: 'shared-core/sessions/plan-verify-money.ts:1' },
];

const kept: Omit<Row, 'at'>[] = [
  { rule: 'imports go one way', case: 'a stage imports an earlier one and itself', files: { 'shared-core/care/a.ts': "import { m } from '../units/distance.ts';\nimport { b } from './b.ts';\nimport { z } from 'zod';" } },
  { rule: 'imports go one way', case: 'the sample, last, imports what it likes of the core', files: { 'shared-core/sample/a.ts': "import { c } from '../contract/contract.ts';" } },
  { rule: 'imports go one way', case: 'the page takes types of views and values of the contract', files: { 'renderer/yard/a.tsx': "import type { Y } from '../../shared-core/views/yard.ts';\nimport { contract } from '../../shared-core/contract/contract.ts';\nimport { Mark } from '../ui/mark.tsx';\nimport { theme } from '../theme.css';" } },
  { rule: 'imports go one way', case: 'app gathers the screens', files: { 'renderer/app/main.tsx': "import { Yard } from '../yard/yard.tsx';" } },
  { rule: 'no round of imports', case: 'a diamond', files: { 'electron/host/a.ts': "import './b.ts';\nimport './c.ts';", 'electron/host/b.ts': "import './d.ts';", 'electron/host/c.ts': "import './d.ts';", 'electron/host/d.ts': '' } },
  { rule: 'the core has no clock and no chance', case: 'a Date of given parts', files: { 'shared-core/calendar/a.ts': 'const d = new Date(Date.UTC(2026, 1, 1));\nconst s: string = Math.floor(1.5).toString(); // Date.now()' } },
  { rule: 'the core has no clock and no chance', case: 'the clock of electron', files: { 'electron/host/a.ts': 'const now = Date.now();' } },
  { rule: 'units and dates are made at their door', case: 'in units, and other casts elsewhere', files: { ...BRANDS, 'shared-core/fleet/a.ts': "const a = ['km'] as const;\nconst b = x as Car;" } },
  { rule: 'no code file over 400 lines', case: '400 lines, and a long JSON', files: { 'shared-core/care/a.ts': lines(400), 'shared-core/sample/a.json': lines(900) } },
  { rule: 'data is JSON', case: '80 rows', files: { 'shared-core/units/a.ts': rows(80), 'shared-core/units/a.json': '[]' } },
  { rule: 'no barrels', case: 'a type handed on beside code of its own', files: { 'shared-core/care/a.ts': "export type { B } from './b.ts';\nexport const a = 1;" } },
  { rule: 'files are named by the domain', case: 'good names', files: { 'shared-core/fleet/fleet.operations.ts': '', 'migrations/0010_record_readings.sql': '', 'migrations/checksums.json': '', 'tests/store/open.test.ts': '', 'README.md': '' } },
  { rule: 'no folder outside the plan', case: 'planned folders', files: { 'shared-core/result/words/en.ts': '', 'tests/shared-core/care/a.test.ts': '', 'tests/loopback/a.test.ts': '', 'electron/main.ts': '', '.ci/run': '' } },
  { rule: 'one door to the page, the database and the solver', case: 'each at its own door', files: { 'electron/host/serve-contract.ts': "import { ipcMain } from 'electron';", 'electron/preload.ts': "import { contextBridge, ipcRenderer } from 'electron';", 'electron/store/open.ts': "import Database from 'better-sqlite3';", 'electron/solver/s.ts': "import highs from 'highs';" } },
  { rule: 'SQL only in the store', case: 'in the store, and English elsewhere', files: { 'electron/store/a.ts': "const s = 'SELECT 1';", 'renderer/yard/a.tsx': "const s = 'Select a car from the list';\nconst t = 'Update the reading';" } },
  { rule: 'no way round the window’s guards', case: 'the settings as they are, and a test that tries them', files: { 'electron/shell/open-window.ts': 'const w = { sandbox: true, nodeIntegration: false, webviewTag: false };', 'electron/shell/asks.ts': "app.commandLine.hasSwitch('no-sandbox');", 'tests/shell/a.test.ts': "shell.openExternal('a');" } },
  { rule: 'a verifier shares no code with its solver', case: 'types, sentences and the form of the question', files: { 'shared-core/sessions/plan-verify.ts': "import type { Quest } from './plan-quest.ts';\nimport { must } from '../result/assert.ts';\nimport { schema } from './plan-instance.ts';", 'shared-core/sessions/plan-solve.ts': "import './plan-quest.ts';\nimport '../result/assert.ts';\nimport './plan-instance.ts';", 'shared-core/sessions/plan-quest.ts': '', 'shared-core/result/assert.ts': '', 'shared-core/sessions/plan-instance.ts': '' } },
];

const run = (rule: RuleName, files: Record<string, string>): Fault[] => HOUSE_RULES[rule](Object.entries(files).map(([file, text]) => sourceOf(file, text)));

describe('each rule finds what breaks it', () => {
  test.each(broken)('$rule: $case', ({ rule, files, at }) => {
    const faults = run(rule, files);
    expect(faults.map(({ file, line }) => `${file}:${line}`)).toEqual([at].flat());
    expect(faults.every(({ found, remedy }) => found !== '' && remedy.length > 20)).toBe(true);
  });

  test('every rule has a case that breaks it', () => {
    expect(new Set(broken.map(({ rule }) => rule))).toEqual(new Set(Object.keys(HOUSE_RULES)));
  });
});

describe('each rule lets the rest be', () => {
  test.each(kept)('$rule: $case', ({ rule, files }) => {
    expect(report(run(rule, files))).toBe('');
  });
});

test('a report names file, line, the line itself and the remedy', () => {
  expect(report(run('the core has no clock and no chance', { 'shared-core/care/a.ts': '\n  const b = Date.now();' }))).toMatch(
    /^shared-core\/care\/a\.ts:2: const b = Date\.now\(\);\n {4}-> the core has no clock/,
  );
});
