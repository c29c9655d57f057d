import { expect, test } from 'vitest';
import { readAllFacts } from '../../electron/store/fact-table.ts';
import { day, openHouseholdWithPip } from './open-test-host.ts';

const item = (id: string) => ({ kind: 'item' as const, id });

test('work that went along with its session into another one goes back with one undo', async () => {
  const host = await openHouseholdWithPip();
  const interval = { repeat: { months: 12, distance: null } };
  for (const id of ['oil', 'pads', 'polish']) await host.must('item.add', { id, car: 'pip', name: `The ${id}`, interval });
  const { sessions: [begun, other] } = await host.must('session.keep', { sessions: [{ day: day('2026-11-25'), place: 'home', tasks: [item('oil'), item('pads')] }, { day: day('2026-12-05'), place: 'home', tasks: [item('polish')] }] });
  const session = begun?.id ?? '';
  await host.must('work.begin', { session });
  await host.must('work.time', { session, task: 'item/oil', run: true });
  await host.must('work.tick', { session, of: [{ task: 'item/oil', step: 'whole' }, { task: 'item/pads', step: 'whole' }] });
  await host.must('work.read', { session, at: { task: 'item/pads', step: 'whole' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 6, unit: 'mm' } } });
  await host.must('work.find', { session, at: { task: 'item/pads', step: 'whole' }, severity: 'watch', text: 'A worn edge' });
  const { id: paper } = (await host.must('paper.keep', { name: 'edge.jpg', base64: Buffer.from('a photograph').toString('base64') })).paper;
  await host.must('work.photo', { session, car: 'pip', paper });
  const facts = () => readAllFacts(host.composed.context.household().store);
  for (const tasks of [[item('oil')], [item('oil'), item('pads')]]) {
    const before = facts();
    const moved = await host.must('session.move', { session, day: day('2026-12-05'), tasks });
    expect(moved.session.id).toBe(other?.id);
    expect(facts()).not.toEqual(before);
    await host.must('entry.withdraw', { entries: [...moved.undo], why: 'a slip' });
    expect(facts()).toEqual(before);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  }
});
