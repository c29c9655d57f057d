import { describe, expect, test } from 'vitest';
import { readAllFacts } from '../../electron/store/fact-table.ts';
import { openTestHost, type TestHost } from './open-test-host.ts';

async function household(): Promise<TestHost> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Ours' });
  await host.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', year: 2020, firstRegistered: '2020-03-01' });
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } } });
  await host.must('observation.note', { id: 'leak', car: 'pip', date: '2026-11-01' as never, text: 'oil below the sump' });
  return host;
}

const WORK = {
  id: 'work', car: 'pip', lines: [{ item: 'oil' }], reading: { value: 40_000, unit: 'km' as const }, settles: ['leak'], vouched: 'stamp' as const, approvedBy: 'A. Tester',
  measured: [{ what: 'pad' as const, place: 'front-left' as const, value: 5.5, unit: 'mm' as const }],
};

describe('the page of a record', () => {
  test('shows it whole, with what it settled and measured, and what it holds of a full entry', async () => {
    const host = await household();
    await host.must('record.add', WORK);
    const page = await host.must('record.show', { record: 'work' });
    expect(page).toMatchObject({ car: { name: 'Pip' }, record: { vouched: 'stamp' }, reading: { typed: { value: 40_000 } }, settled: [{ id: 'leak', closedOn: '2026-11-25' }], measured: [{ what: 'pad', value: 5.5 }], held: null });
    expect(page.elements).toEqual([{ of: 'entry', element: 'what', held: true, withheld: false }, { of: 'entry', element: 'when', held: true, withheld: false }, { of: 'entry', element: 'who', held: false, withheld: false }, { of: 'entry', element: 'approved', held: true, withheld: false }]);
    expect(page.versions).toMatchObject([{ why: null, changed: [], withdrawn: false }]);
  });

  test('keeps what was written first, and says what each amendment changed and why', async () => {
    const host = await household();
    await host.must('record.add', WORK);
    await host.must('record.amend', { id: 'work', why: 'forgot the garage', place: 'garage', placeName: 'the corner' });
    const { undo } = await host.must('record.amend', { id: 'work', why: 'wrong name', placeName: 'the hill' });
    await host.must('entry.withdraw', { entries: [...undo] });
    const page = await host.must('record.show', { record: 'work' });
    expect(page.record.placeName).toBe('the corner');
    expect(page.versions.map(({ why, changed, withdrawn, record }) => [why, changed, withdrawn, record.placeName])).toEqual([
      [null, [], false, null], ['forgot the garage', ['place', 'placeName'], false, 'the corner'], ['wrong name', ['placeName'], true, 'the hill'],
    ]);
  });

  test('is taken back with all that was written in the same steps, and the journal stays whole', async () => {
    const host = await household();
    await host.must('record.add', WORK);
    await host.must('record.amend', { id: 'work', why: 'a note', note: 'with a new washer' });
    expect(await host.must('record.take-back', { record: 'work', why: 'it was another car' })).toMatchObject({ withdrawn: 4, stays: [] });
    const car = await host.must('car.show', { car: 'pip' });
    expect([car.records, car.observations.map((one) => one.closedBy), car.items[0]?.doneOn]).toEqual([[], [null], []]);
    expect(await host.call('record.show', { record: 'work' })).toMatchObject({ ok: false, refusal: { code: 'unknown-record' } });
    expect((await host.must('household.examine', {})).faults).toEqual([]);
  });

  /** A session of two cars closed in one step, with something measured, something to look at again and leavings. */
  async function closed() {
    const host = await household();
    await host.must('car.add', { id: 'wren', name: 'Wren', power: 'petrol', use: 'hobby', year: 2020, firstRegistered: '2020-03-01' });
    await host.must('item.add', { id: 'wren-oil', car: 'wren', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } } });
    await host.must('sheet.set', { item: 'oil', steps: [{ text: 'Look.' }] });
    const { sessions } = await host.must('session.keep', { sessions: [{ day: '2026-11-25' as never, place: 'home', tasks: [{ kind: 'item', id: 'oil' }, { kind: 'item', id: 'wren-oil' }] }] });
    const session = sessions[0]?.id ?? '';
    await host.must('work.begin', { session });
    const { value } = await host.must('work.read', { session, at: { task: 'item/oil', step: 'step-1' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 5.5, unit: 'mm' } } });
    const again = (text: string) => ({ text, days: 1, distance: null, item: 'oil' });
    const { records, followUps, wastes } = await host.must('session.close', {
      session, cars: [{ car: 'pip', lines: [{ item: 'oil' }], measured: [{ value: value.id }], followUps: [again('Level'), again('Leaks')] }, { car: 'wren', lines: [{ item: 'wren-oil' }] }], wastes: [{ what: 'Used oil' }, { what: 'Oil filter' }],
    });
    const idOf = (car: string) => records.find((one) => one.record.car === car)?.record.id ?? '';
    return { host, pip: idOf('pip'), wren: idOf('wren'), followUps, wastes };
  }

  test('takes along what the closing of its session wrote, and says what stays', async () => {
    const { host, pip, wren, followUps, wastes } = await closed();
    await new Promise((wait) => setTimeout(wait, 5));
    await host.must('follow-up.done', { followUp: followUps.find((one) => one.text === 'Leaks')?.id ?? '' });
    await host.must('waste.dispose', { waste: wastes.find((one) => one.what === 'Oil filter')?.id ?? '', how: 'the depot' });
    expect((await host.must('record.show', { record: pip })).beside).toEqual({ goes: ['Lining thickness 5.5 mm', 'Level'], stays: ['Leaks', 'Used oil', 'Oil filter'] });
    expect(await host.must('record.take-back', { record: pip, why: 'it was another car' })).toMatchObject({ stays: ['Leaks', 'Used oil', 'Oil filter'] });
    // The leavings are of the other record too, and go with that.
    expect((await host.must('record.show', { record: wren })).beside).toEqual({ goes: ['Used oil'], stays: ['Oil filter'] });
    await host.must('record.take-back', { record: wren, why: 'nor that' });
    const standing = readAllFacts(host.composed.context.household().store).flatMap(({ family, value }) => (['measurement', 'follow-up', 'waste'].includes(family) ? [`${family}: ${/"(?:text|what)":"([^"]*)"/u.exec(value)?.[1]}`] : []));
    expect(standing).toEqual(['follow-up: Leaks', 'waste: Oil filter']);
    expect((await host.must('household.examine', {})).faults).toEqual([]);
  });

  test('is not taken back once something stands upon it, or a seal has gone out', async () => {
    const host = await household();
    await host.must('record.add', { ...WORK, settles: [] });
    // Another instant, so another step: what settled the leak stands upon the record.
    await new Promise((wait) => setTimeout(wait, 5));
    await host.must('observation.close', { observation: 'leak', record: 'work' });
    expect((await host.must('record.show', { record: 'work' })).held).toEqual({ by: 'entry', on: '2026-11-25' });
    expect(await host.call('record.take-back', { record: 'work', why: 'x' })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use' } });
    const sealed = await household();
    await sealed.must('record.add', WORK);
    await sealed.must('pack.write', { car: 'pip', papers: false });
    expect((await sealed.must('record.show', { record: 'work' })).held).toEqual({ by: 'seal', on: null });
    expect(await sealed.call('record.take-back', { record: 'work', why: 'x' })).toMatchObject({ ok: false, refusal: { code: 'entry-sealed' } });
  });
});

/** Source for all: our own rule. */
describe('a record is refused whole', () => {
  test.each([
    { case: 'what it settles is settled', change: { settles: ['leak', 'other'] }, code: 'unknown-observation', path: ['settles', 1] },
    { case: 'what it settles was seen later', change: { date: '2026-10-01', reading: null, measured: [] }, code: 'seen-after-record', path: ['settles', 0] },
    { case: 'what was measured cannot be', change: { measured: [{ what: 'pad', place: 'front-left', value: -3, unit: 'mm' }] }, code: null, path: ['measured', 0] },
  ])('$case', async ({ change, code, path }) => {
    const host = await household();
    const reply = await host.call('record.add', { ...WORK, ...change } as never);
    expect(reply.ok).toBe(false);
    if (reply.ok) return;
    if (code !== null) expect(reply.refusal.code).toBe(code);
    expect(reply.refusal.path?.slice(0, 2)).toEqual(path);
    expect((await host.must('car.show', { car: 'pip' })).records).toEqual([]);
  });
});
