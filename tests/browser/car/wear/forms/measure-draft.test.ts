import { describe, expect, test } from 'vitest';
import { composeMeasurements, measureDraft, spotsOfDraft } from '../../../../../renderer/car/wear/forms/measure-draft.ts';
import { day } from '../../../../shared-core/calendar/day.ts';
import { memoryHousehold } from '../../../../shared-core/contract/memory-household.ts';

function household() {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip' });
  return made;
}

describe('where a kind is measured', () => {
  test.each([
    { what: 'pad', labels: ['front left', 'front right', 'rear left', 'rear right'] },
    { what: 'disc', labels: ['front left', 'front right', 'rear left', 'rear right'] },
    { what: 'tread', labels: ['front left', 'front right', 'rear left', 'rear right'] },
    { what: 'belt', labels: ['Value'] },
    { what: 'battery-voltage', labels: ['Value'] },
  ] as const)('$what', ({ what, labels }) => {
    const view = household().must('car.show', { car: 'pip' });
    expect(spotsOfDraft(view, measureDraft(view, what, null)).map((spot) => spot.label)).toEqual(labels);
  });

  test('tread: at known wheels, at corners without one, and last at wheels off the car', () => {
    const made = household();
    made.must('wheel.add', { id: 'w', car: 'pip', name: 'W', place: 'off' });
    made.must('wheel.add', { id: 'b', car: 'pip', name: 'B', place: 'rear-right' });
    const view = made.must('car.show', { car: 'pip' });
    const spots = spotsOfDraft(view, measureDraft(view, 'tread', null));
    expect(spots.map((spot) => [spot.label, spot.stored])).toEqual([['B, rear right', false], ['front left', false], ['front right', false], ['rear left', false], ['W, off the car', true]]);
  });

  test('across: three parts of a tread, two of a pad', () => {
    const view = household().must('car.show', { car: 'pip' });
    const edges = (what: 'tread' | 'pad') => spotsOfDraft(view, { ...measureDraft(view, what, null), across: true }).slice(0, 4).map((spot) => [spot.place, spot.edge]);
    expect(edges('tread')).toEqual([['front-left', 'inner edge'], ['front-left', 'middle'], ['front-left', 'outer edge'], ['front-right', 'inner edge']]);
    expect(edges('pad')).toEqual([['front-left', 'inner pad'], ['front-left', 'outer pad'], ['front-right', 'inner pad'], ['front-right', 'outer pad']]);
  });
});

describe('what the form sends', () => {
  test('only what was typed, in the order of the places, and the core takes it', () => {
    const made = household();
    made.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2026-01-01') });
    const view = made.must('car.show', { car: 'pip' });
    const whole = composeMeasurements({ ...measureDraft(view, 'tread', null), values: { 'rear-left/': ' 5,1 ', 'a/': '4.8', 'front-right/': ' ' }, fresh: true }, view);
    expect(whole).toMatchObject({ ok: true, value: { what: 'tread', unit: 'mm', date: '2026-11-25', values: [{ wheel: 'a', place: null, value: 4.8, fresh: true }, { wheel: null, place: 'rear-left', value: 5.1, fresh: true }] } });
    if (whole.ok) expect(made.must('measurements.add', whole.value).measurements.map((one) => one.place)).toEqual(['front-left', 'rear-left']);
  });

  test('what is no number is refused at its place among what was typed; nothing at all is refused too', () => {
    const view = household().must('car.show', { car: 'pip' });
    const draft = measureDraft(view, 'pad', null);
    expect(composeMeasurements({ ...draft, values: { 'front-right/': '5', 'rear-left/': 'thin' } }, view)).toMatchObject({ ok: false, refusal: { code: 'not-a-number', path: ['values', '1', 'value'] } });
    expect(composeMeasurements(draft, view)).toMatchObject({ ok: false, refusal: { code: 'nothing-measured', path: ['values'] } });
  });

  test('opens in the unit that was read last', () => {
    const made = household();
    made.must('measurement.add', { car: 'pip', what: 'tread', place: 'front-left', value: 6, unit: '32nds' });
    const view = made.must('car.show', { car: 'pip' });
    expect(measureDraft(view, 'tread', null).unit).toBe('32nds');
    expect(measureDraft(view, 'pad', null).unit).toBe('mm');
  });
});
