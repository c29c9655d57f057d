import { describe, expect, test } from 'vitest';
import { serviceItems } from '../../../shared-core/care/service-item.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip' });
  return household;
}

const yearly = { repeat: { months: 12, distance: null } };

describe('adding a service item', () => {
  test('nothing is invented: history unknown, not confirmed, first interval as the repeat one', () => {
    const { item } = withPip().must('item.add', { car: 'Pip', name: 'Coolant', interval: yearly });
    expect(item).toMatchObject({
      id: 'new-1', car: 'pip', name: 'Coolant', work: 'replace', harm: 'damage', interval: { first: yearly.repeat, repeat: yearly.repeat }, anchor: { kind: 'completion' }, history: 'unknown',
      printedDate: null, source: null, confirmed: false, minutes: null, access: [], needs: [], place: 'either', garagePrice: null, measure: null,
    });
  });

  test('an interval keeps the unit in which it was typed', () => {
    const { item } = withPip().must('item.add', { car: 'pip', name: 'Oil', interval: { first: { months: null, distance: { value: 1000.5, unit: 'mi' } }, repeat: { months: 12, distance: { value: 15_000, unit: 'km' } } } });
    expect(item.interval).toEqual({ first: { months: null, distance: { value: 1000.5, unit: 'mi' } }, repeat: { months: 12, distance: { value: 15_000, unit: 'km' } } });
  });

  test.each([
    { case: 'an unknown car', request: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'an interval of nothing', request: { interval: { repeat: { months: null, distance: null } } }, code: 'interval-empty' },
    { case: 'no months', request: { interval: { repeat: { months: 0, distance: null } } }, code: 'not-months' },
    { case: 'half a month', request: { interval: { repeat: { months: 1.5, distance: null } } }, code: 'not-months' },
    { case: 'more than 600 months', request: { interval: { repeat: { months: 601, distance: null } } }, code: 'not-months' },
    { case: 'a distance of 0', request: { interval: { repeat: { months: null, distance: { value: 0, unit: 'km' } } } }, code: 'not-a-distance' },
    { case: 'a distance below 0', request: { interval: { repeat: { months: null, distance: { value: -5, unit: 'km' } } } }, code: 'not-a-distance' },
    { case: 'a first date without months', request: { anchor: { kind: 'calendar', firstDate: '2027-03-01' }, interval: { repeat: { months: null, distance: { value: 5, unit: 'km' } } } }, code: 'anchor-needs-months' },
    { case: 'a certificate with a distance', request: { anchor: { kind: 'keep-date', lastValidDay: '2027-03-01' }, interval: { repeat: { months: 12, distance: { value: 5, unit: 'km' } } } }, code: 'anchor-has-no-distance' },
    { case: 'a first date that does not exist', request: { anchor: { kind: 'calendar', firstDate: '2027-02-29' } }, code: 'not-a-date' },
    { case: 'a price with pence of pence', request: { garagePrice: 10.5 }, code: 'not-an-amount' },
    { case: 'a price below 0', request: { garagePrice: -1 }, code: 'not-an-amount' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    const before = household.entries.length;
    expect(household.call('item.add', { car: 'pip', name: 'Coolant', interval: yearly, ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });
});

describe('changing a service item', () => {
  test('touches only the fields given, and never its car', () => {
    const household = withPip();
    const { item } = household.must('item.add', { id: 'coolant', car: 'pip', name: 'Coolant', interval: yearly });
    expect(household.must('item.change', { id: 'coolant', history: 'never-done' }).item).toEqual({ ...item, history: 'never-done' });
    expect(household.facts().get(serviceItems, 'coolant')?.history).toBe('never-done');
    expect(household.call('item.change', { id: 'coolant', car: 'other' } as never)).toMatchObject({ ok: false, refusal: { code: 'unknown-field' } });
  });

  test.each([
    { case: 'an unknown item', request: { id: 'none' }, code: 'unknown-item' },
    { case: 'a first date, while it has a distance', request: { id: 'oil', anchor: { kind: 'calendar', firstDate: '2027-03-01' } }, code: 'anchor-has-no-distance' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    household.must('item.add', { id: 'oil', car: 'pip', name: 'Oil', interval: { repeat: { months: 12, distance: { value: 15_000, unit: 'km' } } } });
    expect(household.call('item.change', request as never)).toMatchObject({ ok: false, refusal: { code } });
  });
});
