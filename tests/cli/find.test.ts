import { describe, expect, test } from 'vitest';
import { searchViewSchema } from '../../shared-core/views/search-view.ts';
import { jsonOf, runCommand } from './run-command.ts';

const SAMPLE = ['--sample', '--on', '2026-11-25'] as const;

describe('find', () => {
  test('one JSON value, as the contract has it', async () => {
    const ran = await runCommand('find', 'brake', 'fluid', ...SAMPLE, '--json');
    expect(ran).toMatchObject({ status: 0, said: '' });
    const view = searchViewSchema.parse(jsonOf(ran));
    expect(view.groups.map((group) => group.kind)).toEqual(expect.arrayContaining(['item', 'record', 'part', 'offer']));
    expect(view.groups[0]?.hits[0]).toMatchObject({ name: 'brake fluid', nameMarks: [[0, 5], [6, 11]] });
  }, 120_000);

  test('the same in lines, with where it was found; nothing, and what is near', async () => {
    const { status, out } = await runCommand('find', '5w30', ...SAMPLE);
    expect([status, out]).toEqual([0, 'Figures of the data card (1)\n  Alder: Engine oil specification  [value: 5W-30, sample grade D4]\n']);
    expect((await runCommand('find', 'oil', 'zzzz', ...SAMPLE)).out).toBe('Nothing has zzzz.\n');
    expect((await runCommand('find', 'brkae', ...SAMPLE)).out).toMatch(/^Nothing is called brkae\. Near it: brake, brakes\.\n\nService items \(/);
  }, 120_000);

  test('wants words, not more than are read, and a number of lines', async () => {
    expect((await runCommand('find')).status).toBe(2);
    expect((await runCommand('find', 'oil', '--most', '0')).status).toBe(2);
    expect(await runCommand('find', 'x'.repeat(201), ...SAMPLE)).toMatchObject({ status: 1, out: '', said: expect.stringContaining('(search-too-long)') as string });
  }, 120_000);
});
