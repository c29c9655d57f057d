import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { measure, measuredHousehold, padItem, seriesOf } from './measured-household.ts';

const limitsOf = (household: ReturnType<typeof measuredHousehold>, at = 0) => seriesOf(household)[at]?.limits.map(({ value, from, items }) => [value, from, items]);

describe('the limit of what is measured', () => {
  test('is the item\'s, unless one is set for the place alone; one for all of the kind comes last', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 8);
    expect(limitsOf(household)).toEqual([]);
    household.must('wear-limit.set', { car: 'pip', what: 'pad', limit: { value: 2, unit: 'mm' } });
    expect(limitsOf(household)).toEqual([[2, 'kind', []]]);
    padItem(household);
    expect(limitsOf(household)).toEqual([[3, 'item', ['pads']]]);
    household.must('wear-limit.set', { car: 'pip', what: 'pad', place: 'front-left', limit: { value: 4, unit: 'mm' } });
    expect(limitsOf(household)).toEqual([[4, 'series', ['pads']]]);
    household.must('wear-limit.set', { car: 'pip', what: 'pad', place: 'front-left', limit: null });
    expect(limitsOf(household)).toEqual([[3, 'item', ['pads']]]);
  });

  test('set again, takes the place of the one before', () => {
    const household = measuredHousehold();
    const set = (value: number) => household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value, unit: 'mm' } }).limit.id;
    expect(set(1.6)).toBe(set(3));
    measure(household, '2026-01-01', 8, { what: 'tread' });
    expect(limitsOf(household)).toEqual([[3, 'kind', []]]);
  });

  test('of two items with unlike limits both are held against it, of two with like ones it is one', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 8);
    padItem(household);
    padItem(household, { id: 'look', work: 'check', measure: { kind: 'pad', name: null, places: [], limit: { value: 5, unit: 'mm' }, way: null } });
    padItem(household, { id: 'again', measure: { kind: 'pad', name: null, places: [], limit: { value: 3, unit: 'mm' }, way: null } });
    expect(limitsOf(household)).toEqual([[3, 'item', ['again', 'pads']], [5, 'item', ['look']]]);
  });

  test('a named law is a limit as any other, in its own unit', () => {
    const household = measuredHousehold();
    measure(household, '2026-01-01', 1.59, { what: 'tread' });
    household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 2, unit: '32nds' } });
    expect(seriesOf(household)[0]).toMatchObject({ laws: [{ law: 'tread-1.6-mm', limit: { value: 1.6, unit: 'mm' }, passes: false }, { law: 'tread-2-32-in', limit: { value: 2, unit: '32nds' }, passes: true }], limits: [{ limit: { value: 2, unit: '32nds' }, value: 1.5875, verdict: 'too-few' }] });
    household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 1.6, unit: 'mm' } });
    expect(seriesOf(household)[0]).toMatchObject({ limits: [{ verdict: 'past-limit' }] });
  });

  test('a wheel may have its own', () => {
    const household = measuredHousehold();
    household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left' });
    measure(household, '2026-11-25', 6, { what: 'tread', wheel: 'a' });
    household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 1.6, unit: 'mm' } });
    household.must('wear-limit.set', { car: 'pip', what: 'tread', wheel: 'a', limit: { value: 4, unit: 'mm' } });
    expect(limitsOf(household)).toEqual([[4, 'series', []]]);
  });

  test('something else says how it wears', () => {
    const household = measuredHousehold();
    measure(household, '2025-01-01', 10, { what: 'other', name: 'Play', unit: '1' });
    measure(household, '2026-01-01', 20, { what: 'other', name: 'play', unit: '1' });
    expect(seriesOf(household)).toMatchObject([{ way: null, line: null, limits: [] }]);
    household.must('wear-limit.set', { car: 'pip', what: 'other', name: 'PLAY', limit: { value: 40, unit: '1' }, way: { by: 'time', rises: true } });
    // By hand: 10 a year, from 20 on 2026-01-01.
    expect(seriesOf(household)).toMatchObject([{ way: { by: 'time', rises: true }, limits: [{ verdict: 'wears', likely: '2028-01-01' }] }]);
  });
});

describe('a limit is refused', () => {
  test.each([
    { case: 'of something else without a name', request: { what: 'other', limit: { value: 1, unit: '1' }, way: { by: 'time', rises: true } }, code: 'measure-needs-name' },
    { case: 'of something else without its way', request: { what: 'other', name: 'play', limit: { value: 1, unit: '1' } }, code: 'measure-needs-way' },
    { case: 'of a known kind with a way', request: { what: 'pad', limit: { value: 3, unit: 'mm' }, way: { by: 'time', rises: true } }, code: 'measure-way-known' },
    { case: 'in a unit of something else', request: { what: 'pad', limit: { value: 3, unit: '%' } }, code: 'measure-unit-differs' },
    { case: 'that cannot be', request: { what: 'belt', limit: { value: 6, unit: 'grade' } }, code: 'measured-value-absurd' },
    { case: 'of a wheel and a place', request: { what: 'tread', wheel: 'a', place: 'front-left', limit: { value: 3, unit: 'mm' } }, code: 'wheel-and-place' },
    { case: 'of pads on a wheel', request: { what: 'pad', wheel: 'a', limit: { value: 3, unit: 'mm' } }, code: 'only-tread-has-wheel' },
    { case: 'of an unknown wheel', request: { what: 'tread', wheel: 'x', limit: { value: 3, unit: 'mm' } }, code: 'unknown-wheel' },
  ])('$case: $code', ({ request, code }) => {
    const household = measuredHousehold();
    household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left' });
    expect(household.call('wear-limit.set', { car: 'pip', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('of an item, and the item\'s own field is named', () => {
    const household = measuredHousehold();
    const request = { car: 'pip', name: 'pads', interval: { repeat: { months: 12, distance: null } }, measure: { kind: 'pad', name: null, places: [], limit: { value: 3, unit: 'V' }, way: null } } satisfies RequestOf<'item.add'>;
    expect(household.call('item.add', request)).toMatchObject({ ok: false, refusal: { code: 'measure-unit-differs', path: ['measure', 'unit'] } });
    const { id } = padItem(household);
    expect(household.call('item.change', { id, measure: { ...request.measure, limit: { value: 99, unit: 'mm' } } })).toMatchObject({ ok: false, refusal: { code: 'measured-value-absurd' } });
    expect(household.must('item.change', { id, measure: null }).item.measure).toBeNull();
  });
});
