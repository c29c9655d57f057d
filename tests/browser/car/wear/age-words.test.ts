import { expect, test } from 'vitest';
import { ageWords, tyreWords } from '../../../../renderer/car/wear/age-words.ts';
import { memoryHousehold } from '../../../shared-core/contract/memory-household.ts';

test.each([[0, '0 months'], [1, '1 month'], [12, '1 year'], [26, '2 years 2 months'], [13, '1 year 1 month'], [240, '20 years']])('%i months', (months, says) => expect(ageWords(months)).toBe(says));

/** Source: the codes of 49 CFR 574.5 by the core's own reading of them; today is 2026-11-25. */
test.each([
  { case: 'four digits name one week', dateCode: '2612', says: 'tyre made in week 26 of 2012 (code 2612), 14 years 4 months old' },
  { case: 'three digits leave decades open', dateCode: '147', says: 'tyre made in week 14 of 1987 or 1997 (code 147): three digits leave the decade open, so 29 to 40 years old' },
  { case: 'three decades', dateCode: '100', says: 'tyre made in week 10 of 1980, 1990 or 2000 (code 100): three digits leave the decade open, so 26 to 47 years old' },
  { case: 'no code', dateCode: null, says: 'tyre date code not entered' },
])('$case', ({ dateCode, says }) => {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip' });
  household.must('wheel.add', { car: 'pip', name: 'A', place: 'front-left', dateCode });
  const [wheel] = household.must('car.show', { car: 'pip' }).wheels;
  expect(wheel === undefined ? null : tyreWords(wheel)).toBe(says);
});
