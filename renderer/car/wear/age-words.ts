import type { WheelView } from '../../../shared-core/views/wheel-view.ts';
import { tell } from '../../ui/words/tell.ts';

const MONTHS_A_YEAR = 12;

/** An age in years and months. @example ageWords(26) //=> '2 years 2 months' */
export function ageWords(months: number): string {
  const [y, n] = [Math.floor(months / MONTHS_A_YEAR), months % MONTHS_A_YEAR];
  if (y === 0) return tell('age.months', { n });
  return n === 0 ? tell('age.years', { n: y }) : tell('age.both', { years: tell('age.years', { n: y }), months: tell('age.months', { n }) });
}

/** When a wheel's tyre was made, by its code, and how old it is; every decade that three digits leave open. */
export function tyreWords({ wheel, tyre }: WheelView): string {
  const [first, ...others] = tyre?.weeks ?? [];
  if (tyre === null || first === undefined) return tell('tyre.no-code');
  const code = wheel.dateCode ?? '';
  const week = String(first.week);
  if (others.length === 0) return tell('tyre.made', { week, year: String(first.year), code, age: ageWords(tyre.leastMonths) });
  const years = [first, ...others].map((one) => String(one.year));
  const [least, most] = [Math.floor(tyre.leastMonths / MONTHS_A_YEAR), Math.ceil(tyre.mostMonths / MONTHS_A_YEAR)];
  return tell('tyre.made-open', { week, code, years: tell('tyre.or', { one: years.slice(0, -1).join(', '), other: years.at(-1) ?? '' }), least, most: tell('age.years', { n: most }) });
}
