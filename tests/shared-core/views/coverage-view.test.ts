import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** The four-year service of Pip: oil at home, brake fluid and pads at a garage, a filter only looked at, plugs by nobody, hinges of one's own. */
function serviced(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-01') });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  for (const [id, name, work] of [['oil', 'Engine oil', 'replace'], ['fluid', 'Brake fluid', 'replace'], ['pads', 'Pads', 'check'], ['filter', 'Cabin filter', 'replace'], ['plugs', 'Plugs', 'replace']] as const) household.must('item.add', { id, car: 'pip', name, work, interval: { repeat: { months: 12, distance: null } } });
  household.must('service-plan.set', { id: 'four', car: 'pip', name: 'The four-year service', from: day('2026-11-01'), lines: [{ item: 'oil' }, { item: 'fluid' }, { item: 'pads' }, { item: 'filter' }, { item: 'plugs' }, { name: 'Hinges' }] });
  household.must('record.add', { id: 'early', car: 'pip', date: day('2026-10-30'), lines: [{ item: 'plugs' }] });
  household.must('record.add', { id: 'home', car: 'pip', date: day('2026-11-05'), doneBy: 'A', lines: [{ item: 'oil' }, { name: 'hinges', work: 'check', outcome: 'good' }, { item: 'fluid', outcome: 'not-done', note: 'seized screw' }] });
  household.must('record.add', {
    id: 'garage', car: 'pip', date: day('2026-11-10'), place: 'garage', placeName: 'Hill Garage',
    lines: [{ item: 'fluid' }, { item: 'pads', outcome: 'watch', note: '4 mm', recheckOn: day('2027-02-01') }, { item: 'filter', work: 'check', outcome: 'good' }, { name: 'Wheel alignment', work: 'check', outcome: 'acted' }],
  });
  return household;
}

const show = (household: MemoryHousehold, request: object = { plan: 'four' }) => household.must('coverage.show', { car: 'Pip', ...request });
const states = (view: ReturnType<typeof show>) => Object.fromEntries(view.lines.map((line) => [line.name, line.state]));

describe('a service', () => {
  test('says of every line whether it was done, by whom and when, across home and garage', () => {
    const view = show(serviced());
    expect(states(view)).toEqual({ 'Engine oil': 'done', 'Brake fluid': 'done', 'Pads': 'done', 'Cabin filter': 'looked-at', 'Plugs': 'nobody', 'Hinges': 'done' });
    expect(view.lines.find((line) => line.name === 'Brake fluid')?.visits).toMatchObject([
      { record: 'home', date: '2026-11-05', place: 'home', by: 'A', outcome: 'not-done', note: 'seized screw' },
      { record: 'garage', date: '2026-11-10', place: 'garage', by: 'Hill Garage', outcome: 'done', papers: 0, reconstructed: false },
    ]);
    expect([view.counts, view.text]).toEqual([{ lines: 6, done: 4, lookedAt: 1, notDone: 0, nobody: 1 }, '4 of 6 lines are done.']);
    expect(view.lines.map((line) => line.text)).toEqual(['done', 'done', 'done', 'looked at, not replaced', 'nobody has done it', 'done']);
  });

  test('what was done beside it stands apart; who did how much is counted without what they left', () => {
    const view = show(serviced());
    expect(view.extras).toMatchObject([{ record: 'garage', name: 'Wheel alignment', outcome: 'acted' }]);
    expect(view.by).toEqual([{ place: 'garage', by: 'Hill Garage', lines: 2 }, { place: 'home', by: 'A', lines: 2 }]);
  });

  test('what is to be watched of it is shown until it is settled', () => {
    const household = serviced();
    household.must('observation.note', { car: 'pip', text: 'Stone chip' });
    household.must('observation.note', { car: 'pip', text: 'Oil on a plug', record: 'early' });
    expect(show(household).watched).toMatchObject([{ text: 'Pads: 4 mm', recheckOn: '2027-02-01' }]);
    expect(show(household).lines.find((line) => line.name === 'Pads')?.outcome).toBe('watch');
    household.must('record.add', { id: 'new-pads', car: 'pip', date: day('2026-11-20'), lines: [{ item: 'pads', work: 'replace', outcome: 'acted' }] });
    household.must('observation.close', { observation: show(household).watched[0]?.id ?? '', record: 'new-pads' });
    expect([show(household).watched, show(household).lines.find((line) => line.name === 'Pads')?.outcome]).toEqual([[], 'acted']);
  });

  test('with all lines done says so', () => {
    const household = serviced();
    household.must('record.add', { car: 'pip', place: 'garage', placeName: 'Mill Garage', doneBy: 'B', lines: [{ item: 'filter' }, { item: 'plugs' }, { item: 'oil' }] });
    expect(show(household)).toMatchObject({ text: 'All 6 lines are done.', counts: { done: 6, nobody: 0 } });
    // The garage's look at the filter counts for it as well: it worked on a line that is done.
    expect(show(household).by).toEqual([{ place: 'garage', by: 'B', lines: 3 }, { place: 'garage', by: 'Hill Garage', lines: 3 }, { place: 'home', by: 'A', lines: 2 }]);
  });

  test('what was to be watched of a line done beside it is shown too', () => {
    const household = serviced();
    household.must('record.add', { car: 'pip', date: day('2026-11-12'), lines: [{ name: 'Wheel bearing', work: 'check', outcome: 'watch', note: 'hums' }] });
    expect(show(household).watched.map((one) => one.text)).toContain('Wheel bearing: hums');
  });

  test('one line that is done is spoken of as one', () => {
    const household = serviced();
    const said = (id: string, lines: readonly { readonly item: string }[]) => {
      household.must('service-plan.set', { id, car: 'pip', name: id, from: day('2026-11-01'), lines: [...lines] });
      return show(household, { plan: id }).text;
    };
    expect([said('one', [{ item: 'oil' }]), said('two', [{ item: 'oil' }, { item: 'plugs' }]), said('none', [{ item: 'plugs' }])]).toEqual(['Its one line is done.', 'Of 2 lines one is done.', 'Its one line is not done.']);
  });

  test('one that is yet to begin is open, and refuses nothing', () => {
    const household = serviced();
    household.must('service-plan.set', { id: 'five', car: 'pip', name: 'The five-year service', from: day('2027-11-01'), lines: [{ item: 'oil' }] });
    expect(show(household, { plan: 'five' })).toMatchObject({ from: '2027-11-01', to: '2027-11-01', counts: { lines: 1, nobody: 1 } });
  });

  test('every service of the car is named with how far it is, the latest first', () => {
    const household = serviced();
    household.must('service-plan.set', { id: 'spring', car: 'pip', name: 'Spring check', from: day('2026-03-01'), to: day('2026-04-01'), lines: [{ item: 'pads' }] });
    household.must('service-plan.set', { id: 'other', car: 'wren', name: 'Another car', from: day('2026-03-01'), lines: [{ name: 'Hood' }] });
    expect(show(household).plans).toEqual([
      { id: 'four', name: 'The four-year service', from: '2026-11-01', to: null, lines: 6, done: 4 },
      { id: 'spring', name: 'Spring check', from: '2026-03-01', to: '2026-04-01', lines: 1, done: 0 },
    ]);
    expect(show(household, {}).plans).toHaveLength(2);
  });

  test('looks only at the days asked for', () => {
    expect(states(show(serviced(), { plan: 'four', from: '2026-10-01', to: '2026-10-31' }))).toMatchObject({ 'Plugs': 'done', 'Engine oil': 'nobody' });
    expect(show(serviced(), { plan: 'four', from: '2026-11-06' })).toMatchObject({ from: '2026-11-06', to: '2026-11-25', counts: { done: 2 } });
  });
});

describe('without a named service', () => {
  test('all items of the car are held against all its records', () => {
    const view = show(serviced(), {});
    expect([view.plan, view.from, view.to, view.lines.length]).toEqual([null, '2022-11-01', '2026-11-25', 5]);
    expect(states(view)).toMatchObject({ 'Plugs': 'done', 'Cabin filter': 'looked-at' });
    expect(view.extras.map((one) => one.name)).toEqual(['hinges', 'Wheel alignment']);
  });

  test('a car without anything has nothing to show', () => {
    expect(serviced().must('coverage.show', { car: 'wren' })).toMatchObject({ from: '1900-01-01', lines: [], extras: [], by: [], counts: { lines: 0 }, text: 'The car has no service items to hold against its records.' });
  });
});

test.each([
  { case: 'an unknown car', request: { car: 'nobody' }, code: 'unknown-car' },
  { case: 'an unknown service', request: { plan: 'five' }, code: 'unknown-service' },
  { case: 'a service of another car', request: { car: 'wren', plan: 'four' }, code: 'unknown-service' },
  { case: 'days the wrong way round', request: { from: '2026-11-10', to: '2026-11-09' }, code: 'service-ends-before' },
])('$case is refused: $code', ({ request, code }) => {
  expect(serviced().call('coverage.show', { car: 'pip', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
});
