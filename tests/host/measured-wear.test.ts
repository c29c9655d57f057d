import { describe, expect, test } from 'vitest';
import { day, openHouseholdWithPip } from './open-test-host.ts';

describe('measured wear through a real file', () => {
  test('stands, is examined without a fault, and is undone with the reading it brought', async () => {
    const host = await openHouseholdWithPip();
    await host.must('item.add', {
      id: 'pads', car: 'pip', name: 'front pads', history: 'never-done', interval: { repeat: { months: 120, distance: null } },
      measure: { kind: 'pad', name: null, places: [], limit: { value: 3, unit: 'mm' }, way: null },
    });
    const before = await host.must('car.show', { car: 'pip' });
    const added = await host.must('measurement.add', { car: 'pip', what: 'pad', place: 'front-left', value: 2.5, unit: 'mm', item: 'pads', reading: { value: 30_000, unit: 'mi' } });
    expect((await host.must('due.show', {})).cars[0]?.windows[0]).toMatchObject({ state: 'late', limb: 'wear', reason: { code: 'reason-worn-out' } });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
    expect(added.undo).toHaveLength(2);
    await host.must('entry.withdraw', { entries: [...added.undo] });
    expect(await host.must('car.show', { car: 'pip' })).toEqual(before);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('wheels with their moves and limits are examined without a fault', async () => {
    const host = await openHouseholdWithPip();
    await host.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2025-01-20'), dateCode: '2612' });
    await host.must('wheel.move', { car: 'pip', on: day('2026-01-20'), moves: [{ wheel: 'a', place: 'off' }] });
    await host.must('wheel.add', { id: 'b', car: 'pip', name: 'B', place: 'front-left', on: day('2026-01-20') });
    await host.must('wheel.move', { car: 'pip', moves: [{ wheel: 'b', place: 'rear-left' }, { wheel: 'a', place: 'front-left' }] });
    await host.must('measurement.add', { id: 'm', car: 'pip', what: 'tread', wheel: 'a', value: 2, unit: '32nds' });
    await host.must('wear-limit.set', { car: 'pip', what: 'tread', wheel: 'a', limit: { value: 1.6, unit: 'mm' } });
    await host.must('measurement.correct', { id: 'm', fresh: true });
    expect((await host.must('car.show', { car: 'pip' })).measured).toMatchObject([{ wheel: { name: 'A' }, laws: [{ law: 'tread-1.6-mm', passes: false }, { law: 'tread-2-32-in', passes: true }], limits: [{ verdict: 'past-limit' }] }]);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('what a measurement names must be there: a paper, and a wheel may not be undone from under it', async () => {
    const host = await openHouseholdWithPip();
    expect(await host.call('measurement.add', { car: 'pip', what: 'pad', value: 8, unit: 'mm', paper: 'ab'.repeat(32) })).toMatchObject({ ok: false, refusal: { code: 'refers-to-nothing', values: { family: 'paper' } } });
    const { paper } = await host.must('paper.keep', { name: 'sheet.txt', base64: Buffer.from('pads 8 mm').toString('base64') });
    expect((await host.must('measurement.add', { car: 'pip', what: 'pad', value: 8, unit: 'mm', paper: paper.id })).measurement.paper).toBe(paper.id);
    const wheel = await host.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left' });
    await host.must('measurement.add', { car: 'pip', what: 'tread', place: 'front-left', value: 8, unit: 'mm' });
    expect(await host.call('entry.withdraw', { entries: [...wheel.undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use' } });
  });
});
