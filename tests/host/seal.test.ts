import { describe, expect, test } from 'vitest';
import { jsonOf, runCommand } from '../cli/run-command.ts';
import { openHouseholdWithPip, openTestHost, temporaryFolder } from './open-test-host.ts';

describe('a seal over the journal', () => {
  test('is given once over one head, forbids undoing what it is over, and a later pack is held against it', async () => {
    const host = await openHouseholdWithPip();
    const before = await host.must('reading.record', { car: 'pip', value: 27_000 });
    expect(await host.must('seal.show', {})).toMatchObject({ given: [], sample: false });
    const given = await host.must('seal.give', {});
    const again = await host.must('seal.give', {});
    expect([again.text, again.at]).toEqual([given.text, given.at]);
    const shown = await host.must('seal.show', {});
    expect(shown.given).toEqual([{ entries: given.entries, root: given.root, at: given.at, text: given.text }]);
    expect([shown.entries, shown.root]).toEqual([given.entries, given.root]);
    expect(await host.call('entry.withdraw', { entries: [...before.undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-sealed' } });
    const after = await host.must('observation.note', { car: 'pip', text: 'a rattle' });
    await host.must('entry.withdraw', { entries: [...after.undo] });
    const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
    const run = await runCommand('check', path, '--seal', given.text, '--json');
    expect(run.status).toBe(0);
    expect(jsonOf(run)).toMatchObject({ sound: true, notes: expect.arrayContaining([expect.stringContaining('seal')]) as string[] });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('of another household is a fault of the pack', async () => {
    const [host, other] = [await openHouseholdWithPip(), await openHouseholdWithPip()];
    const { text } = await other.must('seal.give', {});
    const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
    expect(await host.must('pack.check', { pack: path, seal: text })).toMatchObject({ sound: false, faults: [{ code: 'bad-signature' }] });
  });

  test('has a QR code whose three corners are there and whose path stays within its squares', async () => {
    const { code } = await (await openHouseholdWithPip()).must('seal.give', {});
    // A version of the standard: 17 squares and four for each; the corner pattern is a row of seven. Source: ISO/IEC 18004, from memory.
    expect((code.squares - 17) % 4).toBe(0);
    for (const corner of ['M0 0h7', `M${code.squares - 7} 0h7`, `M0 ${code.squares - 1}h7`]) expect(code.path).toContain(corner);
    const runs = [...code.path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map(([, x, y, width]) => [Number(x) + Number(width), Number(y)]);
    expect(Math.max(...runs.flat())).toBeLessThanOrEqual(code.squares);
  });

  test('needs a household', async () => {
    expect(await openTestHost().call('seal.give', {})).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
  });

  test('seal on the command line shows and gives', async () => {
    const host = await openHouseholdWithPip();
    await host.composed.close();
    expect((await runCommand('seal', '--household', host.folder)).out).toContain('No seal has been given.');
    const gave = await runCommand('seal', '--give', '--household', host.folder);
    expect(gave.out).toMatch(/TRUNNION SEAL 1\n[0-9A-Z]{4} /);
    expect(gave.out).toContain('It does not show that what was entered is true');
    expect((await runCommand('seal', '--household', host.folder)).out).toContain('TRUNNION SEAL 1');
    expect((await runCommand('seal', 'now', '--household', host.folder)).status).toBe(2);
  });
});
