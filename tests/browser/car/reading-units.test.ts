import { describe, expect, test } from 'vitest';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { readingDraft } from '../../../renderer/car/forms/reading-start.ts';
import { unitOfDraft, unitOfLast, unitOn } from '../../../renderer/car/forms/reading-units.ts';

const UNITS = [{ from: null, unit: 'mi' }, { from: '2024-05-01', unit: 'km' }] as CarView['units'];

/** Source for all: worked by hand from the stated rule. */
describe('the unit of a reading', () => {
  test.each([
    { case: 'before the change', date: '2024-04-30', unit: 'mi' },
    { case: 'on the day of it', date: '2024-05-01', unit: 'km' },
    { case: 'after it', date: '2026-01-01', unit: 'km' },
    { case: 'with no date yet', date: '31/2', unit: 'km' },
  ])('is that of the instrument of its day: $case', ({ date, unit }) => expect(unitOn(UNITS, date)).toBe(unit));

  test('is the chosen one once it was chosen', () => {
    expect(unitOfDraft({ ...readingDraft('2024-04-30'), unit: 'km' }, { units: UNITS })).toBe('km');
    expect(unitOfDraft(readingDraft('2024-04-30'), { units: UNITS })).toBe('mi');
  });

  test('what an old instrument last showed is in the unit of the days before', () => {
    expect(unitOfLast(readingDraft('2024-05-01'), { units: UNITS })).toBe('mi');
    expect(unitOfLast(readingDraft('2024-05-02'), { units: UNITS })).toBe('km');
    expect(unitOfLast({ ...readingDraft('2024-05-02'), lastUnit: 'mi' }, { units: UNITS })).toBe('mi');
  });
});
