import { expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { packCheckView } from '../../shared-core/views/pack-check-view.ts';
import { day } from '../host/open-test-host.ts';
import { handedOver, keeper, nextKeeper, readPack } from './keepers.ts';

async function notesOf(path: string): Promise<string> {
  const report = await checkPackAt(path);
  if (!report.ok) throw new Error(report.refusal.code);
  expect(report.value.faults).toEqual([]);
  return packCheckView(report.value).notes.join('\n');
}

test('days and fields that a first keeper kept back are told by the packs of the second and the third, and by their check', async () => {
  const first = await keeper('2025-03-02');
  await first.must('car.add', { id: 'pip', name: 'Pip' });
  for (const date of ['2023-03-01', '2024-03-01']) await first.must('record.add', { car: 'pip', date: day(date), place: 'home', title: 'Bulb', doneBy: 'Somebody', lines: [{ name: 'Bulb' }] });
  const second = await nextKeeper(await handedOver(first, { withhold: ['doneBy'], period: { from: day('2024-01-01'), to: null } }), '2026-06-01');
  const secondPack = await handedOver(second.host);
  const third = await nextKeeper(secondPack, '2026-07-01');
  for (const pack of [secondPack, await handedOver(third.host)]) {
    const { said } = readPack(pack);
    expect(said).toContain('What an earlier keeper left out: pip-history-2025-03-02 shows what is dated 1 Jan 2024 or later only.');
    expect(said).toContain('Of what earlier keepers recorded: who did the work, withheld by them.');
    expect(said).not.toContain('Nothing: every field of every entry');
    expect(await notesOf(pack)).toMatch(/pip-history-2025-03-02\.zip, the pack of an earlier keeper, shows what is dated 1 Jan 2024 or later only\./);
  }
});
