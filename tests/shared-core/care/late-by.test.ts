import { describe, expect, test } from 'vitest';
import { lateBy } from '../../../shared-core/care/late-by.ts';
import { day } from '../calendar/day.ts';
import { metresOf } from '../fleet/car-examples.ts';

const nothing = { today: day('2026-11-25'), time: null, printedDate: null, target: null, driven: null, wornOut: false };
const km = (value: number) => metresOf(value);

describe('late by', () => {
  // Source: our own definition; days by hand, months as java.time and Temporal count them.
  test.each([
    { case: 'nothing to be late with', limbs: {}, late: null },
    { case: 'on the day itself', limbs: { time: day('2026-11-25') }, late: null },
    { case: 'the day after', limbs: { time: day('2026-11-24') }, late: { days: 1, months: 0, metres: null } },
    { case: 'a year', limbs: { time: day('2025-11-25') }, late: { days: 365, months: 12, metres: null } },
    { case: 'a year less a day', limbs: { time: day('2025-11-26') }, late: { days: 364, months: 11, metres: null } },
    { case: 'since a 31st', limbs: { time: day('2026-08-31') }, late: { days: 86, months: 2, metres: null } },
    { case: 'a printed date is late as a time is', limbs: { printedDate: day('2026-11-20') }, late: { days: 5, months: 0, metres: null } },
    { case: 'of two dates, the earlier', limbs: { time: day('2026-11-01'), printedDate: day('2026-11-20') }, late: { days: 24, months: 0, metres: null } },
    { case: 'of two dates, one ahead', limbs: { time: day('2027-11-01'), printedDate: day('2026-11-20') }, late: { days: 5, months: 0, metres: null } },
    { case: 'a metre short', limbs: { target: metresOf(50_000), driven: metresOf(49_999.999) }, late: null },
    { case: 'exactly at its distance', limbs: { target: km(50_000), driven: km(50_000) }, late: { days: null, months: null, metres: 0 } },
    { case: 'past its distance', limbs: { target: km(50_000), driven: km(51_200) }, late: { days: null, months: null, metres: 1_200_000 } },
    { case: 'by both', limbs: { time: day('2026-10-25'), target: km(50_000), driven: km(51_200) }, late: { days: 31, months: 1, metres: 1_200_000 } },
    { case: 'late by distance, its date ahead', limbs: { time: day('2027-10-25'), target: km(50_000), driven: km(51_200) }, late: { days: null, months: null, metres: 1_200_000 } },
    { case: 'late by its date, distance to go', limbs: { time: day('2026-10-25'), target: km(50_000), driven: km(40_000) }, late: { days: 31, months: 1, metres: null } },
    { case: 'a target and no reading', limbs: { target: km(50_000) }, late: null },
    { case: 'worn past its limit', limbs: { wornOut: true }, late: { days: null, months: null, metres: null } },
  ])('$case', ({ limbs, late }) => {
    expect(lateBy({ ...nothing, ...limbs })).toEqual(late);
  });
});
