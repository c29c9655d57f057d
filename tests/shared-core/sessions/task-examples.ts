import { dayNumber } from '../../../shared-core/calendar/local-date.ts';
import type { HouseholdTask } from '../../../shared-core/sessions/household-task.ts';
import { day } from '../calendar/day.ts';

/** An item of Pip's due exactly on a day, 100 days after it was last done, worth 50.00, at home for 50.00. */
export function taskDue(on: string, more: Partial<HouseholdTask> = {}): HouseholdTask {
  const due = dayNumber(day(on));
  return {
    ref: { kind: 'item', id: 'oil' }, key: 'item/oil', car: 'pip', carName: 'Pip', name: 'oil', minutes: 50, minutesAssumed: false, access: [],
    lateMinorADay: 60, valueMinor: 5000, prices: new Map([['home', 5000]]), unpriced: [], priceMissing: false,
    dueDays: Array.from({ length: 9 }, () => due), countedFrom: due - 100, likely: day(on), late: false, legal: null, partsFrom: null, ...more,
  };
}
