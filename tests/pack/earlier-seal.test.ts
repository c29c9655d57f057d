import { expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { must } from '../../shared-core/result/assert.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';

async function started(on: string): Promise<TestHost> {
  const host = openTestHost({ on });
  await host.must('household.start', { name: 'Household' });
  return host;
}

async function firstPack(): Promise<{ readonly path: string; readonly seal: string }> {
  const host = await started('2026-03-02');
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await host.must('record.add', { car: 'pip', date: day('2026-03-02'), place: 'home', title: 'oil', lines: [{ name: 'oil' }] });
  return host.must('pack.write', { car: 'pip', out: temporaryFolder() });
}

async function handedOn(pack: string, on: string): Promise<string> {
  const host = await started(on);
  await host.must('pack.take-in', { pack });
  const car = must((await host.must('due.show', {})).cars[0], 'car');
  return (await host.must('pack.write', { car: car.id, out: temporaryFolder() })).path;
}

async function checked(path: string, seal: string) {
  const report = await checkPackAt(path, seal);
  if (!report.ok) throw new Error(report.refusal.code);
  return { faults: report.value.faults.map((fault) => [fault.code, fault.message.key]), notes: report.value.notes.map(({ key, values }) => ({ key, values })) };
}

test('the seal of the first keeper agrees with the first pack within a second and a third, and proves nothing of those', async () => {
  const { path, seal } = await firstPack();
  const second = await handedOn(path, '2026-06-01');
  const third = await handedOn(second, '2026-09-01');
  for (const [pack, within] of [[second, /^data\/previous\/[^!]+\.zip$/], [third, /^data\/previous\/[^!]+\.zip!\/data\/previous\/[^!]+\.zip$/]] as const) {
    const { faults, notes } = await checked(pack, seal);
    expect(faults).toEqual([]);
    expect(notes).toEqual(expect.arrayContaining([{ key: 'note-given-agrees-earlier', values: { given: expect.any(Number) as number, path: expect.stringMatching(within) as string } }, { key: 'note-no-given-seal', values: {} }]));
    expect(notes.map((note) => note.key)).not.toContain('note-given-agrees');
  }
});

test('a seal of a key that no pack within has is a fault, once', async () => {
  const [{ path }, { seal }] = [await firstPack(), await firstPack()];
  const { faults, notes } = await checked(await handedOn(path, '2026-06-01'), seal);
  expect(faults).toEqual([['bad-signature', 'fault-given-other-key']]);
  expect(notes.map((note) => note.key)).not.toContain('note-given-agrees-earlier');
});
