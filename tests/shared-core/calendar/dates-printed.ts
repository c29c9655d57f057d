import { addMonths, monthsBetween } from '../../../shared-core/calendar/add-months.ts';
import { addDays, dayNumber, daysBetween, fromDayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import vectors from './months.json' with { type: 'json' };

/** Every vector worked out here and now, one a line: run by itself under another time zone, it must print the same. */
export function datesPrinted(): string {
  const date = (text: string) => text as LocalDate;
  const skipped = ['1993-08-21', '1994-12-31', '1995-01-01', '2011-12-30', '2018-11-04', '2026-03-29', '2026-10-25'].map(date);
  return [
    ...vectors.add.map((one) => `${one.from} ${one.months} ${addMonths(date(one.from), one.months)}`),
    ...vectors.between.map((one) => `${one.from} ${one.to} ${monthsBetween(date(one.from), date(one.to))}`),
    ...skipped.map((one) => [one, dayNumber(one), fromDayNumber(dayNumber(one)), addDays(one, 1), addDays(one, -1), addMonths(one, 1), addMonths(addMonths(one, -1), 1), daysBetween(one, date('2026-11-25')), monthsBetween(one, date('2026-11-25'))].join(' ')),
  ].join('\n');
}

if (process.argv.includes('--print')) process.stdout.write(datesPrinted());
