import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jpeg, png } from '../papers/small-files.ts';
import { jsonOf, runCommand } from './run-command.ts';

test('a folder is walked in order, no link is followed, what is refused is told and stops nothing, and the same bytes are kept once', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'in', 'b'), { recursive: true });
  writeFileSync(join(folder, 'secret'), 'secret');
  for (const [name, bytes] of [['a.png', png(3, 3)], ['b/c.jpg', jpeg()], ['b/again.png', png(3, 3)], ['broken.png', png(9, 9).subarray(0, 60)], ['empty', ''], ['CON', 'a reserved name'], ['tab\there', 'x'], ['.hidden', 'x'], ['page.html.jpg', '<html>']] as const) writeFileSync(join(folder, 'in', name), bytes);
  symlinkSync(join(folder, 'secret'), join(folder, 'in', 'link'));
  const run = await runCommand('papers', join(folder, 'in'), join(folder, 'in', '..', 'nothing'), '--sample', '--on', '2026-11-25', '--json');
  const told = jsonOf(run) as { kept: number; known: number; refused: number; files: { path: string; state: string; code: string | null }[] };
  expect(told.files.map((one) => [one.path.slice(folder.length + 1), one.state, one.code])).toEqual([
    ['in/CON', 'kept', null],
    ['in/a.png', 'kept', null],
    ['in/b/again.png', 'known', null],
    ['in/b/c.jpg', 'kept', null],
    ['in/broken.png', 'refused', 'paper-broken'],
    ['in/empty', 'refused', 'paper-empty'],
    ['in/link', 'refused', 'link'],
    ['in/page.html.jpg', 'kept', null],
    ['in/tab\there', 'refused', 'control-characters'],
    ['nothing', 'refused', 'missing'],
  ]);
  expect([told.kept, told.known, told.refused]).toEqual([4, 1, 5]);
  expect(run.status).toBe(0);
  const none = await runCommand('papers', join(folder, 'nothing'), '--sample', '--on', '2026-11-25', '--json');
  expect([none.status, jsonOf(none)]).toMatchObject([1, { kept: 0, refused: 1, files: [{ code: 'missing' }] }]);
  expect((await runCommand('papers')).status).toBe(2);
}, 120_000);
