import { describe, expect, test } from 'vitest';
import { servicePlans } from '../../../shared-core/care/service-plan.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  for (const name of ['Pip', 'Wren']) household.must('car.add', { id: name.toLowerCase(), name });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil and filter', interval: { repeat: { months: 12, distance: null } } });
  household.must('item.add', { id: 'belt', car: 'wren', name: 'Belt', interval: { repeat: { months: 12, distance: null } } });
  return household;
}

describe('a named service', () => {
  test('takes name and work of its items, and lines of one\'s own', () => {
    const { plan } = withPip().must('service-plan.set', { car: 'Pip', name: 'The four-year service', lines: [{ item: 'oil' }, { name: 'Door hinges' }, { item: null, name: 'Seat belts', work: 'check' }] });
    expect(plan).toEqual({
      id: 'new-1', car: 'pip', name: 'The four-year service', from: '2026-11-25', to: null,
      lines: [{ item: 'oil', name: 'Engine oil and filter', work: 'replace' }, { item: null, name: 'Door hinges', work: 'check' }, { item: null, name: 'Seat belts', work: 'check' }],
    });
  });

  test('is stated anew under its id, and taken away', () => {
    const household = withPip();
    const { plan } = household.must('service-plan.set', { car: 'pip', name: 'Yearly', lines: [{ item: 'oil' }] });
    household.must('service-plan.set', { id: plan.id, car: 'pip', name: 'Yearly, with more', from: day('2026-01-01'), lines: [{ item: 'oil' }, { name: 'Hinges' }] });
    expect(household.facts().all(servicePlans)).toMatchObject([{ name: 'Yearly, with more', from: '2026-01-01', lines: [{}, {}] }]);
    expect(household.must('service-plan.remove', { id: plan.id }).plan.name).toBe('Yearly, with more');
    expect(household.facts().all(servicePlans)).toEqual([]);
    expect(household.call('service-plan.remove', { id: plan.id })).toMatchObject({ ok: false, refusal: { code: 'unknown-service' } });
  });

  test.each([
    { case: 'an unknown car', request: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'an item of another car', request: { lines: [{ item: 'belt' }] }, code: 'unknown-item' },
    { case: 'an unknown item', request: { lines: [{ item: 'none' }] }, code: 'unknown-item' },
    { case: 'a line of nothing', request: { lines: [{ work: 'check' }] }, code: 'line-without-name' },
    { case: 'an item twice', request: { lines: [{ item: 'oil' }, { item: 'oil', name: 'Again' }] }, code: 'line-twice' },
    { case: 'one\'s own line named like an item', request: { lines: [{ item: 'oil' }, { name: 'engine oil and filter ' }] }, code: 'line-twice' },
    { case: 'an end before its beginning', request: { from: '2026-11-25', to: '2026-11-24' }, code: 'service-ends-before' },
    { case: 'no name', request: { name: ' ' }, code: 'text-empty' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    expect(household.call('service-plan.set', { car: 'pip', name: 'Yearly', lines: [{ item: 'oil' }], ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.facts().all(servicePlans)).toEqual([]);
  });

  test('a name is that of one service of a car, in any case', () => {
    const household = withPip();
    const { plan } = household.must('service-plan.set', { car: 'pip', name: 'Yearly', from: day('2026-01-01'), lines: [{ item: 'oil' }] });
    expect(household.call('service-plan.set', { car: 'pip', name: 'yearly ', lines: [{ item: 'oil' }] })).toMatchObject({ ok: false, refusal: { code: 'service-name-taken', values: { name: 'Yearly', from: '2026-01-01' }, path: ['name'] } });
    expect(household.call('service-plan.set', { id: plan.id, car: 'pip', name: 'YEARLY', lines: [{ item: 'oil' }] }).ok).toBe(true);
    expect(household.call('service-plan.set', { car: 'wren', name: 'Yearly', lines: [{ item: 'belt' }] }).ok).toBe(true);
  });

  test('an id of another car\'s service is taken', () => {
    const household = withPip();
    household.must('service-plan.set', { id: 'yearly', car: 'wren', name: 'Yearly', lines: [{ item: 'belt' }] });
    expect(household.call('service-plan.set', { id: 'yearly', car: 'pip', name: 'Yearly', lines: [{ item: 'oil' }] })).toMatchObject({ ok: false, refusal: { code: 'id-taken' } });
  });
});
