import { describe, expect, test } from 'vitest';
import { startingSet, startingSetKeySchema } from '../../../shared-core/care/starting-set.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A car on 2026-11-25, petrol, in miles, kept from new since 2022-11-01 unless said otherwise. */
function withPip(car: Partial<RequestOf<'car.add'>> = {}, hemisphere: 'north' | 'south' | 'none' = 'north'): MemoryHousehold {
  const household = memoryHousehold({ unit: 'mi', hemisphere });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-01'), ...car });
  return household;
}

const start = (household: MemoryHousehold, request: Partial<RequestOf<'items.start'>> = {}) => household.must('items.start', { car: 'Pip', ...request });
const windowOf = (household: MemoryHousehold, name: string) => household.must('due.show', {}).cars[0]?.windows.find((window) => window.name === name);

describe('starting from a set', () => {
  test('adds all in one step, by the set that fits, each marked and unconfirmed', () => {
    const household = withPip();
    const before = household.entries.length;
    const { items, kept } = start(household, { history: 'never-done' });
    expect([items.length, household.entries.length - before, kept]).toEqual([startingSet('petrol').items.length, items.length, []]);
    expect(new Set(items.map((item) => `${item.source ?? ''}/${String(item.confirmed)}/${item.history}`))).toEqual(new Set(['common practice: check your handbook/false/never-done']));
    expect(items[0]).toMatchObject({
      car: 'pip', name: 'Engine oil and filter', work: 'replace', harm: 'damage', anchor: { kind: 'completion' }, minutes: 45, place: 'either',
      interval: { first: { months: 12, distance: { value: 10_000, unit: 'mi' } }, repeat: { months: 12, distance: { value: 10_000, unit: 'mi' } } },
    });
  });

  test('in km the distances are the round ones in km', () => {
    expect(start(withPip({ unit: 'km' })).items[0]?.interval.repeat).toEqual({ months: 12, distance: { value: 15_000, unit: 'km' } });
  });

  test.each([
    { case: 'kept from new for a year', car: { firstRegistered: day('2025-11-25') }, history: 'never-done' },
    { case: 'kept from new for a year and a day', car: { firstRegistered: day('2025-11-24') }, history: 'unknown' },
    { case: 'kept since the day it was registered', car: { firstRegistered: day('2026-11-01'), keptSince: day('2026-11-01') }, history: 'never-done' },
    { case: 'bought soon after it was registered', car: { firstRegistered: day('2026-10-01'), keptSince: day('2026-11-01') }, history: 'unknown' },
    { case: 'bought later', car: { keptSince: day('2024-01-10') }, history: 'unknown' },
    { case: 'of which nobody knows since when', car: { firstRegistered: null }, history: 'unknown' },
  ])('a car $case: $history', ({ car, history }) => {
    expect(new Set(start(withPip(car)).items.map((item) => item.history))).toEqual(new Set([history]));
  });

  test('what is said of the history goes before', () => {
    expect(new Set(start(withPip({ keptSince: day('2024-01-10') }), { history: 'from-purchase' }).items.map((item) => item.history))).toEqual(new Set(['from-purchase']));
  });

  test('of a car bought later no date is invented; the days of the year alone stand', () => {
    const household = withPip({ keptSince: day('2024-01-10') });
    start(household);
    const windows = household.must('due.show', {}).cars[0]?.windows ?? [];
    expect(windows.filter((window) => window.state !== 'unknown').map((window) => window.name)).toEqual(['Frost protection of coolant and washer fluid']);
  });

  test('the missed brake fluid of a car past its fourth birthday is late by a year; what has passed is named to be asked about', () => {
    const household = withPip();
    const { items, past } = start(household, { history: 'never-done' });
    expect(windowOf(household, 'Brake fluid')).toMatchObject({ state: 'late', lateBy: { months: 12 } });
    expect(windowOf(household, 'Coolant')).toMatchObject({ state: 'ahead', likely: '2027-11-01' });
    const named = items.filter((item) => past.includes(item.id)).map((item) => item.name);
    expect(named).toContain('Brake fluid');
    expect(named).toContain('Spark plugs');
    expect(named).not.toContain('Coolant');
    expect(named).toContain('Frost protection of coolant and washer fluid');
  });

  test('severe use shortens the intervals as the car has it, and the items keep theirs', () => {
    const household = withPip({ severeUse: 0.5 });
    const { items } = start(household, { history: 'never-done' });
    expect(items.find((item) => item.name === 'Coolant')?.interval.first.months).toBe(60);
    expect(windowOf(household, 'Coolant')).toMatchObject({ state: 'late', lateBy: { months: 18 } });
  });

  test('what the car does not have is left out, what it has already stays as it is', () => {
    const household = withPip();
    const own = household.must('item.add', { id: 'oil', car: 'pip', name: ' engine oil and FILTER ', interval: { repeat: { months: 6, distance: null } } }).item;
    const { items, kept } = start(household, { omit: ['timing-belt', 'air-conditioning'] });
    expect(items.map((item) => item.name)).not.toContain('Air conditioning: cooling and leaks');
    expect([items.length, kept]).toEqual([startingSet('petrol').items.length - 3, ['Engine oil and filter']]);
    expect(household.must('car.show', { car: 'pip' }).items.find(({ item }) => item.id === 'oil')?.item).toEqual(own);
  });

  test('a second set adds only what the first had not', () => {
    const household = withPip({ power: 'diesel' });
    start(household, { set: 'camper' });
    expect(start(household).items.map((item) => item.name)).toEqual(['Glow plugs', 'Exhaust fluid level', 'Tyre sealant bottle', 'Air conditioning: cooling and leaks', 'Soot filter: load and warnings']);
  });

  test.each(startingSetKeySchema.options)('%s: the whole set is accepted', (set) => {
    expect(start(withPip(), { set }).items).toHaveLength(startingSet(set).items.length);
  });

  // Unknown is not done: the day that has passed stands until somebody says that it was done.
  test.each([
    { hemisphere: 'north', today: '2026-11-25', first: '2026-10-01' },
    { hemisphere: 'none', today: '2026-10-01', first: '2026-10-01' },
    { hemisphere: 'north', today: '2026-10-02', first: '2026-10-01' },
    { hemisphere: 'north', today: '2026-09-30', first: '2025-10-01' },
    { hemisphere: 'south', today: '2026-11-25', first: '2026-04-01' },
    { hemisphere: 'south', today: '2026-03-31', first: '2025-04-01' },
  ] as const)('before the winter of the $hemisphere, from $today, nobody knows: $first', ({ hemisphere, today, first }) => {
    const household = withPip({}, hemisphere).on(today);
    expect(start(household).items.find((item) => item.anchor.kind === 'calendar')?.anchor).toEqual({ kind: 'calendar', firstDate: first });
  });

  test.each([
    { case: 'never done, registered since the last such day', car: { firstRegistered: day('2026-10-15') }, history: 'never-done', first: '2027-10-01' },
    { case: 'never done, registered before it', car: { firstRegistered: day('2026-05-15') }, history: 'never-done', first: '2026-10-01' },
    { case: 'counted from a purchase since', car: { keptSince: day('2026-11-01') }, history: 'from-purchase', first: '2027-10-01' },
    { case: 'counted from a purchase before it', car: { keptSince: day('2026-09-01') }, history: 'from-purchase', first: '2026-10-01' },
  ] as const)('before the winter, $case: $first', ({ car, history, first }) => {
    expect(start(withPip(car), { history }).items.find((item) => item.anchor.kind === 'calendar')?.anchor).toMatchObject({ firstDate: first });
  });

  test.each([
    { case: 'a car whose purchase nobody entered: its last day was this October', car: {}, state: 'late' },
    { case: 'a car just bought: what was done in October nobody knows', car: { keptSince: day('2026-11-01') }, state: 'unknown' },
  ])('before the winter, of $case; it is to be looked at now, and asked about', ({ car, state }) => {
    const household = withPip(car);
    const frost = start(household).items.find((item) => item.anchor.kind === 'calendar')?.id ?? '';
    expect(household.must('due.show', {}).cars[0]?.windows.find(({ item }) => item === frost)?.state).toBe(state);
    const asked = () => household.must('intake.show', { car: 'pip' });
    expect(asked().look.find(({ item }) => item === frost)).toMatchObject({ knowledge: 'unknown', question: 'open' });
    household.must('intake.answer', { car: 'pip', item: frost, answer: 'said', date: day('2026-10-20') });
    expect(asked().look.find(({ item }) => item === frost)?.question).not.toBe('open');
    expect(household.must('due.show', {}).cars[0]?.windows.find(({ item }) => item === frost)).toMatchObject({ state: 'ahead', likely: '2027-10-01' });
  });

  test('a printed date is taken with it; without one the bottle has passed its four years', () => {
    const { items, past } = start(withPip(), { history: 'never-done', printedDates: { 'tyre-sealant': day('2027-03-31') } });
    const sealant = items.find((item) => item.name === 'Tyre sealant bottle');
    expect([sealant?.printedDate, past.includes(sealant?.id ?? '')]).toEqual(['2027-03-31', false]);
    const without = start(withPip(), { history: 'never-done' });
    expect(without.past).toContain(without.items.find((item) => item.name === 'Tyre sealant bottle')?.id);
  });

  test('counted from a purchase years ago, nothing was taken to be never done', () => {
    expect(start(withPip({ keptSince: day('2023-01-10') }), { history: 'from-purchase' }).past).toEqual([]);
  });

  test.each([
    { case: 'an unknown car', request: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'an unknown set', request: { set: 'steam' }, code: 'unknown-set' },
    { case: 'something left out that is not in the set', request: { omit: ['glow-plugs'] }, code: 'not-in-set' },
    { case: 'a date printed on brake fluid', request: { printedDates: { 'brake-fluid': '2027-01-01' } }, code: 'not-printed' },
    { case: 'a printed date that does not exist', request: { printedDates: { 'tyre-sealant': '2027-02-29' } }, code: 'not-a-date' },
    { case: 'nothing left of the set', request: { omit: startingSet('petrol').items.map((item) => item.key) }, code: 'nothing-to-start' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    const before = household.entries.length;
    expect(household.call('items.start', { car: 'pip', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('a car driven otherwise is asked which set', () => {
    const household = withPip({ power: 'other' });
    expect(household.call('items.start', { car: 'pip' })).toMatchObject({ ok: false, refusal: { code: 'set-not-known' } });
    expect(start(household, { set: 'camper' }).items.length).toBeGreaterThan(12);
  });
});

describe('confirming an interval', () => {
  test('names its source, and may bring the handbook\'s own interval', () => {
    const household = withPip();
    const [oil] = start(household).items;
    const { item } = household.must('item.confirm', { item: oil?.id ?? '', source: 'Handbook, page 212' });
    expect(item).toEqual({ ...oil, source: 'Handbook, page 212', confirmed: true });
    const own = { first: { months: 24, distance: null }, repeat: { months: 24, distance: { value: 18_000, unit: 'mi' as const } } };
    expect(household.must('item.confirm', { item: item.id, source: 'Handbook, page 213', interval: own }).item).toEqual({ ...item, source: 'Handbook, page 213', interval: own });
  });

  test.each([
    { case: 'no source', request: { source: ' ' }, code: 'text-empty' },
    { case: 'an unknown item', request: { item: 'none', source: 'Handbook' }, code: 'unknown-item' },
    { case: 'an interval of nothing', request: { source: 'Handbook', interval: { first: { months: null, distance: null }, repeat: { months: 1, distance: null } } }, code: 'interval-empty' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    const [oil] = start(household).items;
    expect(household.call('item.confirm', { item: oil?.id ?? '', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
  });
});

test('the sets are shown with the one that fits, and with what the car has already', () => {
  const household = withPip({ power: 'hybrid' });
  household.must('item.add', { car: 'pip', name: 'brake fluid', interval: { repeat: { months: 24, distance: null } } });
  const { suggested, sets } = household.must('starting-sets.show', { car: 'pip' });
  expect([suggested, sets.map((set) => set.key)]).toEqual(['hybrid', [...startingSetKeySchema.options]]);
  expect(sets.map((set) => set.items.filter((item) => item.there).map((item) => item.key))).toEqual(sets.map(() => ['brake-fluid']));
  expect(household.call('starting-sets.show', { car: 'nobody' })).toMatchObject({ ok: false, refusal: { code: 'unknown-car' } });
});
