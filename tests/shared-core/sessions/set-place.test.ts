import { describe, expect, test } from 'vitest';
import type { OperationName, RequestOf } from '../../../shared-core/contract/contract.ts';
import { standingPlaces } from '../../../shared-core/sessions/place.ts';
import { planSettings } from '../../../shared-core/sessions/plan-settings.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';
import { twoCars } from './two-cars.ts';

const names = (household: MemoryHousehold) => standingPlaces(household.facts()).map(({ place, assumed }) => `${place.name}${assumed ? ' (assumed)' : ''}`);

describe('places', () => {
  test('a home and a garage are assumed until one of the kind is stated', () => {
    const household = memoryHousehold();
    expect(names(household)).toEqual(['Home (assumed)', 'A garage (assumed)']);
    household.must('place.set', { name: 'Hill Works', kind: 'garage', id: 'hill', closedWeekdays: [7, 6] });
    expect(names(household)).toEqual(['Home (assumed)', 'Hill Works']);
    household.must('place.set', { name: 'The drive', kind: 'home', openingMinor: 900 });
    expect(names(household)).toEqual(['The drive', 'Hill Works']);
    expect(standingPlaces(household.facts()).map((one) => one.place)).toMatchObject([{ id: 'home', openingMinor: 900, minutesADay: 300 }, { id: 'hill', closedWeekdays: [6, 7], noticeDays: 14 }]);
    household.must('place.remove', { id: 'hill' });
    expect(names(household)).toEqual(['The drive', 'A garage (assumed)']);
  });

  test.each([
    { case: 'a second home', operation: 'place.set', request: { name: 'Other', kind: 'home', id: 'two' }, code: 'home-twice' },
    { case: 'a name that stands', operation: 'place.set', request: { name: ' HILL works', kind: 'garage' }, code: 'place-name-taken' },
    { case: 'a garage turned into a home', operation: 'place.set', request: { name: 'Hill Works', kind: 'home', id: 'hill' }, code: 'place-kind-stays' },
    { case: 'closed all week', operation: 'place.set', request: { name: 'Never', kind: 'garage', closedWeekdays: [1, 2, 3, 4, 5, 6, 7] }, code: 'place-never-open' },
    { case: 'an eighth day of the week', operation: 'place.set', request: { name: 'Never', kind: 'garage', closedWeekdays: [8] }, code: 'not-a-weekday' },
    { case: 'a weekday twice', operation: 'place.set', request: { name: 'Never', kind: 'garage', closedWeekdays: [1, 1] }, code: 'weekday-twice' },
    { case: 'more minutes than a day has', operation: 'place.set', request: { name: 'Long', kind: 'garage', minutesADay: 1441 }, code: 'not-minutes-a-day' },
    { case: 'a negative fee', operation: 'place.set', request: { name: 'Cheap', kind: 'garage', openingMinor: -1 }, code: 'not-an-amount' },
    { case: 'an opening that no plan can weigh', operation: 'place.set', request: { name: 'Dear', kind: 'garage', openingMinor: 1e12 }, code: 'plan-sum-too-large' },
    { case: 'a minute that no plan can weigh', operation: 'place.set', request: { name: 'Dear', kind: 'garage', minuteMinor: 100_001 }, code: 'plan-sum-too-large' },
    { case: 'a day late that no plan can weigh', operation: 'plan-settings.set', request: { lateMinorADay: { damage: 1_000_001 } }, code: 'plan-sum-too-large' },
    { case: 'a saving that no plan can weigh', operation: 'worth-while.set', request: { when: { kind: 'item', id: 'pip-oil' }, also: { kind: 'item', id: 'pip-pads' }, savesMinor: 1e9 }, code: 'plan-sum-too-large' },
    { case: 'removing no place', operation: 'place.remove', request: { id: 'garage' }, code: 'unknown-place' },
    { case: 'closing no place', operation: 'place-days.set', request: { place: 'moon', from: '2026-12-24', reason: 'holiday' }, code: 'unknown-place' },
    { case: 'days that end before they begin', operation: 'place-days.set', request: { place: 'home', from: '2026-12-24', to: '2026-12-23', reason: 'holiday' }, code: 'days-end-before' },
    { case: 'closing without a reason', operation: 'place-days.set', request: { place: 'home', from: '2026-12-24', reason: '' }, code: 'text-empty' },
    { case: 'days of no car', operation: 'car-days.set', request: { car: 'nobody', from: '2026-12-24' }, code: 'unknown-car' },
    { case: 'a car\'s days turned round', operation: 'car-days.set', request: { car: 'pip', from: '2026-12-24', to: '2026-12-01' }, code: 'days-end-before' },
    { case: 'taking back no days', operation: 'car-days.remove', request: { id: 'x' }, code: 'unknown-days' },
    { case: 'a horizon of no day', operation: 'plan-settings.set', request: { horizonDays: 0 }, code: 'not-a-horizon' },
    { case: 'access of another car\'s id', operation: 'access.set', request: { id: 'wheels', car: 'alder', name: 'wheels off', minutes: 20 }, code: 'id-taken' },
    { case: 'access under a name that stands', operation: 'access.set', request: { id: 'other', car: 'pip', name: 'Wheels OFF', minutes: 20 }, code: 'access-named-already' },
    { case: 'a pair of one', operation: 'worth-while.set', request: { when: { kind: 'item', id: 'pip-oil' }, also: { kind: 'item', id: 'pip-oil' } }, code: 'pair-with-itself' },
    { case: 'a pair of two cars', operation: 'worth-while.set', request: { when: { kind: 'item', id: 'pip-oil' }, also: { kind: 'item', id: 'alder-oil' } }, code: 'pair-of-two-cars' },
    { case: 'a pair that stands, the other way round', operation: 'worth-while.set', request: { when: { kind: 'item', id: 'pip-oil' }, also: { kind: 'obligation', id: 'pip-test' } }, code: 'pair-stands' },
    { case: 'a pair with nothing', operation: 'worth-while.set', request: { when: { kind: 'item', id: 'pip-oil' }, also: { kind: 'item', id: 'none' } }, code: 'unknown-item' },
  ] as const)('$case is refused: $code', ({ operation, request, code }) => {
    const household = twoCars();
    household.must('place.set', { name: 'Hill Works', kind: 'garage', id: 'hill' });
    household.must('place.set', { name: 'The drive', kind: 'home' });
    household.must('access.set', { id: 'wheels', car: 'pip', name: 'wheels off', minutes: 30 });
    household.must('worth-while.set', { when: { kind: 'obligation', id: 'pip-test' }, also: { kind: 'item', id: 'pip-oil' } });
    const before = household.entries.length;
    const reply = household.call(operation as OperationName, request as RequestOf<OperationName>);
    expect(reply).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('access is stated anew under its name, in any case', () => {
    const household = twoCars();
    household.must('access.set', { id: 'wheels', car: 'Pip', name: 'wheels off', minutes: 30 });
    expect(household.must('access.set', { car: 'pip', name: 'Wheels off', minutes: 25 }).access).toEqual({ id: 'wheels', car: 'pip', name: 'Wheels off', minutes: 25 });
    household.must('access.remove', { id: 'wheels' });
    expect(household.call('access.remove', { id: 'wheels' })).toMatchObject({ refusal: { code: 'unknown-access' } });
  });

  test('settings are ours until stated, then only what is given changes', () => {
    const household = memoryHousehold();
    // Source: DESIGN section 4, "defaults 200 / 60 / 10 minor units for safety / damage / comfort: ours".
    expect(planSettings(household.facts())).toMatchObject({ assumed: true, settings: { lateMinorADay: { safety: 200, damage: 60, comfort: 10 }, workWeekdays: [6, 7] } });
    household.must('plan-settings.set', { lateMinorADay: { comfort: 25 }, workWeekdays: [5, 6] });
    household.must('plan-settings.set', { preferredMinutesADay: 180 });
    expect(planSettings(household.facts())).toMatchObject({ assumed: false, settings: { lateMinorADay: { safety: 200, damage: 60, comfort: 25 }, workWeekdays: [5, 6], preferredMinutesADay: 180, horizonDays: 90 } });
  });

  test('a garage at which a session is kept cannot be taken away until somebody has said how it went', () => {
    const household = twoCars();
    household.must('place.set', { name: 'Hill Works', kind: 'garage', id: 'hill' });
    const { sessions } = household.must('session.keep', { sessions: [{ day: day('2026-12-07'), place: 'hill', tasks: [{ kind: 'item', id: 'pip-oil' }] }] });
    expect(household.call('place.remove', { id: 'hill' })).toMatchObject({ refusal: { code: 'place-in-use', values: { day: '2026-12-07' } } });
    expect(household.on('2026-12-08').call('place.remove', { id: 'hill' })).toMatchObject({ refusal: { code: 'place-in-use' } });
    household.must('session.end', { session: sessions[0]?.id ?? '', as: 'done' });
    household.must('place.remove', { id: 'hill' });
  });
});
