import { describe, expect, test } from 'vitest';
import { startingSet, startingSetKeySchema } from '../../../shared-core/care/starting-set.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

type Request = Partial<RequestOf<'car.start'>>;

const PIP = { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-01'), keptSince: day('2026-11-01') };
const start = (household: MemoryHousehold, request: Request = {}) => household.must('car.start', { ...PIP, ...request });

/** On 2026-11-25. */
describe('a car with all it starts from', () => {
  test('is one step: the car, its reading, its items', () => {
    const household = memoryHousehold({ unit: 'mi' });
    const before = household.entries.length;
    const { car, reading, items } = start(household, { reading: { value: 38_250 }, set: 'petrol', history: 'from-purchase' });
    expect(household.entries.slice(before).map((entry) => entry.kind)).toEqual(['car-set', 'reading-recorded', ...items.map(() => 'service-item-set')]);
    expect([car.id, reading?.state, reading?.reading.typed, reading?.reading.date]).toEqual(['pip', 'accepted', { value: 38_250, unit: 'mi' }, '2026-11-25']);
    expect(items.map((item) => item.name)).toEqual(startingSet('petrol').items.map((item) => item.name));
    expect(new Set(items.map((item) => `${item.car} ${item.history} ${String(item.confirmed)}`))).toEqual(new Set(['pip from-purchase false']));
  });

  test('is just as if each had been asked for by itself', () => {
    const [whole, parts] = [memoryHousehold(), memoryHousehold()];
    start(whole, { reading: { value: 61_000 }, set: 'diesel', omit: ['glow-plugs'], history: 'from-purchase' });
    parts.must('car.add', PIP);
    parts.must('reading.record', { car: 'pip', value: 61_000 });
    parts.must('items.start', { car: 'pip', set: 'diesel', omit: ['glow-plugs'], history: 'from-purchase' });
    expect(whole.must('due.show', {})).toEqual(parts.must('due.show', {}));
  });

  // Source for all: by hand, the car was got 24 days ago; what is counted from then has a day, what is unknown has none.
  test.each([
    { history: 'from-purchase', unknown: 0 },
    { history: 'unknown', unknown: startingSet('petrol').items.length },
  ] as const)('bought 24 days ago, $history: $unknown without a day, none late', ({ history, unknown }) => {
    const household = memoryHousehold();
    start(household, { reading: { value: 61_000 }, set: 'petrol', history });
    const windows = household.must('due.show', {}).cars[0]?.windows ?? [];
    expect(windows.filter((window) => window.state === 'unknown')).toHaveLength(unknown);
    expect(windows.filter((window) => window.state === 'late')).toEqual([]);
  });

  test.each(startingSetKeySchema.options)('%s: the whole set', (set) => {
    expect(start(memoryHousehold(), { set }).items).toHaveLength(startingSet(set).items.length);
  });

  test.each([
    { case: 'a diesel', request: { power: 'diesel' }, set: 'diesel' },
    { case: 'an old car', request: { year: 1972, power: 'diesel' }, set: 'before-1980' },
    { case: 'driven otherwise', request: { power: 'other' }, set: null },
  ] as const)('the set that fits: $case', ({ request, set }) => {
    expect(start(memoryHousehold(), { ...request, set: 'fitting' }).items.map((item) => item.name)).toEqual(set === null ? [] : startingSet(set).items.map((item) => item.name));
  });

  test.each([
    { case: 'the set names it', request: { set: 'diesel' }, power: 'diesel' },
    { case: 'the set names it, though another is usual', request: { set: 'electric' }, power: 'electric' },
    { case: 'said by the keeper, as the set is for', request: { set: 'electric', power: 'electric' }, power: 'electric' },
    { case: 'said by the keeper, of none of the sets', request: { set: 'petrol', power: 'other' }, power: 'other' },
    { case: 'said by the keeper, and the set fits whatever drives it', request: { set: 'camper', power: 'diesel' }, power: 'diesel' },
    { case: 'the set fits whatever drives it', request: { set: 'camper' }, power: 'petrol' },
    { case: 'no set', request: {}, power: 'petrol' },
  ] as const)('is driven by what is said, else by what its set is for: $case', ({ request, power }) => {
    expect(start(memoryHousehold(), request).car.power).toBe(power);
  });

  test('without a set or a reading is the car alone', () => {
    const household = memoryHousehold();
    const before = household.entries.length;
    expect(start(household)).toMatchObject({ reading: null, items: [], kept: [], past: [] });
    expect(household.entries).toHaveLength(before + 1);
  });

  test('names what would have passed were it never done', () => {
    const { items, past } = start(memoryHousehold(), { keptSince: null, set: 'petrol', history: 'never-done' });
    expect(items.filter((item) => past.includes(item.id)).map((item) => item.name)).toContain('Brake fluid');
  });

  test.each([
    { case: 'no name', request: { name: '' }, code: 'text-empty', path: ['name'] },
    { case: 'a car not yet there', request: { firstRegistered: day('2027-01-01'), keptSince: null }, code: 'date-in-future', path: ['firstRegistered'] },
    { case: 'no distance', request: { reading: { value: -1 } }, code: 'not-a-distance', path: ['reading', 'value'] },
    { case: 'a reading of tomorrow', request: { reading: { value: 10, date: day('2026-11-26') } }, code: 'date-in-future', path: ['reading', 'date'] },
    { case: 'something left out that is not in the set', request: { set: 'petrol', omit: ['glow-plugs'] }, code: 'not-in-set', path: ['omit'] },
    { case: 'a set for a car that is driven otherwise', request: { set: 'electric', power: 'hybrid' }, code: 'set-for-other-power', path: ['set'] },
    { case: 'the set of petrol cars for a diesel', request: { set: 'petrol', power: 'diesel' }, code: 'set-for-other-power', path: ['set'] },
    { case: 'an unknown set', request: { set: 'steam' }, code: 'unknown-set', path: ['set'] },
  ])('$case is refused, and nothing is written', ({ request, code, path }) => {
    const household = memoryHousehold();
    const before = household.entries.length;
    expect(household.call('car.start', { ...PIP, ...request } as never)).toMatchObject({ ok: false, refusal: { code, path } });
    expect(household.entries).toHaveLength(before);
  });
});

describe('the sets for a car that is not added yet', () => {
  const NEW = { power: 'petrol', year: null, firstRegistered: null, keptSince: null } as const;
  const shown = (request: Partial<Exclude<RequestOf<'starting-sets.show'>, { car: string }>>) => memoryHousehold().must('starting-sets.show', { ...NEW, ...request });

  test.each([
    { case: 'nothing known', request: {}, suggested: 'petrol', history: 'unknown' },
    { case: 'a new diesel', request: { power: 'diesel', firstRegistered: day('2026-03-01') }, suggested: 'diesel', history: 'never-done' },
    { case: 'a diesel kept from new for years', request: { power: 'diesel', firstRegistered: day('2020-01-01') }, suggested: 'diesel', history: 'unknown' },
    { case: 'an old car', request: { year: 1972 }, suggested: 'before-1980', history: 'unknown' },
    { case: 'bought used', request: { firstRegistered: day('2020-01-01'), keptSince: day('2026-01-01') }, suggested: 'petrol', history: 'unknown' },
    { case: 'driven otherwise', request: { power: 'other' }, suggested: null, history: 'unknown' },
  ] as const)('$case', ({ request, suggested, history }) => {
    const reply = shown(request);
    expect([reply.suggested, reply.history]).toEqual([suggested, history]);
    expect(reply.sets.flatMap((set) => set.items).some((item) => item.there)).toBe(false);
  });

  test('of a car that is there, what it has is named', () => {
    const household = memoryHousehold();
    start(household, { set: 'petrol', omit: ['coolant'] });
    const petrol = household.must('starting-sets.show', { car: 'Pip' }).sets.find((set) => set.key === 'petrol');
    expect(petrol?.items.filter((item) => !item.there).map((item) => item.key)).toEqual(['coolant']);
  });
});
