import { execFile } from 'node:child_process';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { dueCommand } from '../../electron/cli/commands/due.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jsonOf, runCommand, runProcess } from './run-command.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

describe('a process of its own', () => {
  test('takes a list from standard input that comes in pieces', async () => {
    const folder = join(temporaryFolder(), 'household');
    const pieces = ['[{"operation": "household.start"},', ' {"operation": "car.add", "request": {"id": "pip", ', '"name": "Pip"}}]'];
    const ran = await runProcess(['enter', '-', '--household', folder, '--json'], pieces);
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(jsonOf(ran)).toMatchObject({ entered: [{ operation: 'household.start' }, { operation: 'car.add', reply: { car: { name: 'Pip' } } }] });
    const empty = await runProcess(['record', '-', '--household', folder, '--json'], []);
    expect([empty.status, jsonOf(empty)]).toMatchObject([1, { refused: { code: 'file-not-json' } }]);
  });

  test('does not break off where nobody reads what it says', async () => {
    const ran = await runProcess(['enter', '--list'], [], { nobodyReads: true });
    expect([ran.status, ran.said]).toEqual([0, '']);
  });

  test('ends with the status of what it did', async () => {
    const folder = join(temporaryFolder(), 'household');
    expect((await runProcess(['sell'])).status).toBe(2);
    expect(await runProcess(['reading', 'pip', '1', '--household', folder])).toEqual({ status: 1, out: '', said: 'There is no car pip here. Check its name. (unknown-car)\n' });
    expect((await runProcess(['examine', '--household', folder])).status).toBe(0);
  });

  test('through npm: one JSON value on standard output and nothing else, from the folder the person is in', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'start.json'), '{"operation": "household.start"}');
    const npm = (...words: string[]) => promisify(execFile)('npm', ['run', '--silent', '--prefix', ROOT, 'trunnion', '--', ...words], { cwd: folder, env: { ...process.env, INIT_CWD: folder } });
    const { stdout, stderr } = await npm('enter', 'start.json', '--household', 'here', '--json');
    expect(stderr).toBe('');
    expect(JSON.parse(stdout)).toMatchObject({ household: { unit: 'km' }, undo: [0] });
    expect(readdirSync(folder)).toContain('here');
    await expect(npm('sell')).rejects.toMatchObject({ code: 2, stdout: '' });
  });
});

describe('what goes wrong inside', () => {
  test('is said with a note, as a refusal like any other', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {});
    const run = vi.spyOn(dueCommand, 'run').mockImplementation(() => {
      throw new Error('Bug: a leg is missing');
    });
    onTestFinished(() => {
      log.mockRestore();
      run.mockRestore();
    });
    const ran = await runCommand('due', '--json', '--household', join(temporaryFolder(), 'household'));
    expect([ran.status, jsonOf(ran)]).toMatchObject([1, { refused: { code: 'internal', values: { ref: expect.stringMatching(/^\w{4,6}$/) as string } } }]);
    expect(log.mock.calls[0]?.join(' ')).toContain('a leg is missing');
  });
});

describe('--sample', () => {
  const before = process.env['TMPDIR'];
  afterEach(() => {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  });

  test('works on a copy that is thrown away', async () => {
    const temporary = temporaryFolder();
    process.env['TMPDIR'] = temporary;
    const due = await runCommand('due', '--sample', '--on', '2026-11-25', '--json');
    expect([due.status, due.said]).toEqual([0, '']);
    expect((jsonOf(due) as { cars: unknown[] }).cars.length).toBeGreaterThan(1);
    expect(readdirSync(temporary)).toEqual([]);
  });

  test('is refused with a sentence where there is no room for it', async () => {
    process.env['TMPDIR'] = join(temporaryFolder(), 'nowhere');
    const ran = await runCommand('due', '--sample', '--json');
    expect([ran.status, jsonOf(ran)]).toMatchObject([1, { refused: { code: 'folder-unreachable' } }]);
  });
});
