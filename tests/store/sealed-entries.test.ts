import { join } from 'node:path';
import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { openHouseholdWithPip, temporaryFolder } from '../host/open-test-host.ts';

describe('an entry that a pack holds', () => {
  test('can no longer be withdrawn; one entered later can', async () => {
    const host = await openHouseholdWithPip();
    const before = await host.must('reading.record', { car: 'pip', value: 27_000 });
    await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
    expect(await host.call('entry.withdraw', { entries: [...before.undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-sealed' } });
    const after = await host.must('observation.note', { car: 'pip', text: 'a rattle' });
    await host.must('entry.withdraw', { entries: [...after.undo] });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('can be withdrawn where no pack came of it', async () => {
    const host = await openHouseholdWithPip();
    const entered = await host.must('reading.record', { car: 'pip', value: 27_000 });
    const folder = temporaryFolder();
    const { name } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
    const later = await host.must('observation.note', { car: 'pip', text: 'a rattle' });
    writeFileSync(join(folder, `${name}.zip`), 'something else of that name');
    expect(await host.call('pack.write', { car: 'pip', out: folder })).toMatchObject({ ok: false, refusal: { code: 'pack-exists' } });
    await host.must('entry.withdraw', { entries: [...later.undo] });
    expect(await host.call('entry.withdraw', { entries: [...entered.undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-sealed' } });
  });

  test('is in it whole or not at all, though it is withdrawn while the pack is made', async () => {
    const host = await openHouseholdWithPip();
    const entered = await host.must('record.add', { car: 'pip', lines: [{ name: 'Bulb' }] });
    const packing = host.call('pack.write', { car: 'pip', out: temporaryFolder() });
    const withdrawn = await host.call('entry.withdraw', { entries: [...entered.undo] });
    const pack = await packing;
    expect(withdrawn.ok).toBe(true);
    if (!pack.ok) throw new Error(pack.refusal.code);
    expect(await host.must('pack.check', { pack: pack.value.path, seal: pack.value.seal })).toMatchObject({ faults: [] });
    // The seal is over the withdrawal too, so what was sealed is what stands.
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
    expect(host.composed.context.household().store.prepare('SELECT tree_size FROM seal_given').pluck().all()).toEqual([6]);
  });
});
