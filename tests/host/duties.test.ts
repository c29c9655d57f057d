import { describe, expect, test } from 'vitest';
import { day, openHouseholdWithPip } from './open-test-host.ts';

describe('recalls, allowances and a first test through a real file', () => {
  test('stand, are examined without a fault, and are undone', async () => {
    const host = await openHouseholdWithPip();
    const before = await host.must('car.show', { car: 'pip' });
    const undo: number[] = [];
    const keep = (reply: { readonly undo: readonly number[] }) => undo.push(...reply.undo);
    keep(await host.must('recall.set', { id: 'belt', car: 'pip', number: 'R-104', what: 'Seat belt anchor' }));
    keep(await host.must('recall.set', { id: 'belt', car: 'pip', number: 'R-104', what: 'Seat belt anchor', nextOn: day('2027-02-01') }));
    keep(await host.must('allowance.set', { id: 'insured', car: 'pip', kind: 'insurance', distance: { value: 8000, unit: 'mi' }, from: day('2026-08-01') }));
    keep(await host.must('allowance.set', { id: 'gone', car: 'pip', kind: 'lease', distance: { value: 8000, unit: 'mi' }, from: day('2026-08-01') }));
    keep(await host.must('allowance.remove', { id: 'gone' }));
    keep(await host.must('obligation.add', { id: 'kit', car: 'pip', kind: 'printed-expiry', name: 'first-aid kit', lastValidDay: day('2027-06-30'), months: null }));
    keep(await host.must('obligation.change', { id: 'kit', lastValidDay: day('2028-06-30') }));
    const [car] = (await host.must('due.show', {})).cars;
    expect(car).toMatchObject({
      recalls: [{ state: 'booked', recall: { number: 'R-104', nextOn: '2027-02-01' } }],
      allowances: [{ id: 'insured', from: '2026-08-01', to: '2027-07-31', allowed: 8000, unit: 'mi' }],
      obligations: [{ id: 'kit', on: '2028-06-30' }],
    });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
    expect(undo).toHaveLength(7);
    await host.must('entry.withdraw', { entries: undo });
    expect(await host.must('car.show', { car: 'pip' })).toEqual(before);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('stating anew that is undone leaves what was stated first', async () => {
    const host = await openHouseholdWithPip();
    const set = (value: number) => host.must('allowance.set', { id: 'a', car: 'pip', kind: 'lease', distance: { value, unit: 'mi' }, from: day('2026-08-01') });
    await set(8000);
    const { undo } = await set(9000);
    const removed = await host.must('allowance.remove', { id: 'a' });
    const shown = async () => (await host.must('due.show', {})).cars[0]?.allowances.map((one) => one.allowed);
    expect(await shown()).toEqual([]);
    await host.must('entry.withdraw', { entries: [...removed.undo] });
    expect(await shown()).toEqual([9000]);
    await host.must('entry.withdraw', { entries: [...undo] });
    expect(await shown()).toEqual([8000]);
  });

  test('a recall names only papers that are there, and keeps them from being withdrawn', async () => {
    const host = await openHouseholdWithPip();
    const recall = { car: 'pip', number: 'R-104', what: 'Seat belt anchor' };
    expect(await host.call('recall.set', { ...recall, papers: ['ab'.repeat(32)] })).toMatchObject({ ok: false, refusal: { code: 'refers-to-nothing', values: { family: 'paper' } } });
    const { paper, undo } = await host.must('paper.keep', { name: 'letter.txt', base64: Buffer.from('bring it in').toString('base64') });
    await host.must('recall.set', { ...recall, papers: [paper.id] });
    expect((await host.must('car.show', { car: 'pip' })).papers).toMatchObject([{ id: paper.id }]);
    expect(await host.call('entry.withdraw', { entries: [...undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use' } });
  });
});
