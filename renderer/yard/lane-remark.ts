import { monthOf, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { addMonths } from '../../shared-core/calendar/add-months.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { tell } from '../ui/words/tell.ts';

/** What else one should know beside an odometer: when it was last read, and how long the car still rests or when its instrument was replaced. */
export function laneRemark(lane: Pick<Lane, 'laidUpMonths' | 'layUps' | 'lastReadOn' | 'instrumentReplacedOn'>, today: LocalDate, words: HouseholdWords): string {
  const parts = lane.lastReadOn === null ? [] : [tell('odometer.last-read', { date: words.nearDate(lane.lastReadOn, today) })];
  const rests = lane.layUps.find(({ from, to }) => from <= today && (to === null || today <= to));
  const last = lastLaidUpMonth(lane.laidUpMonths, today);
  if (rests !== undefined) parts.push(rests.to === null ? tell('laid-up.open') : tell('laid-up.until', { month: words.nearDate(rests.to, today) }));
  else if (last !== null) parts.push(tell('laid-up.until', { month: words.monthName(last) }));
  else if (lane.instrumentReplacedOn !== null) parts.push(tell('odometer.replaced', { year: lane.instrumentReplacedOn.slice(0, 4) }));
  return parts.join(', ');
}

/** A date in the last month of the sleep that a car is in; null where it is awake. */
function lastLaidUpMonth(months: readonly number[], today: LocalDate): LocalDate | null {
  if (!months.includes(monthOf(today))) return null;
  let date = today;
  while (months.includes(monthOf(addMonths(date, 1)))) date = addMonths(date, 1);
  return date;
}
