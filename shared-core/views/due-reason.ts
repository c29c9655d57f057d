import { assertNever, must } from '../result/assert.ts';
import type { DueWindow } from '../care/due-window.ts';
import type { LimitTarget } from '../care/limit-target.ts';
import { isOnce } from '../care/limit.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { Message, MessageValues } from '../result/result.ts';
import { instrumentAt, presentInstrument, shownWhenReached } from './odometer-shown.ts';

/** Why an item stands where it stands: which limb governs, and from what it is counted. `wear`: why, if it is by wear. */
export function dueReason(item: ServiceItem, car: Car, use: CarUse, target: LimitTarget | null, window: DueWindow, wear: Message | null): Message {
  if (window.state === 'unknown') return unknownReason(item, use, target);
  if (window.limb === null && isOnce(item.interval)) return { key: 'reason-once', values: {} };
  if (window.limb === null || (window.limb === 'distance' && window.earliest === null)) return { key: 'reason-not-foreseeable', values: valuesOf(car, use, target) };
  switch (window.limb) {
    case 'printed-date':
      return { key: 'reason-printed-date', values: { date: must(item.printedDate, 'printed date') } };
    case 'time':
      return { key: `reason-time-${must(target, 'limit').from}`, values: valuesOf(car, use, target) };
    case 'distance':
      return distanceReason(car, use, must(target, 'limit'));
    case 'wear':
      return must(wear, 'reason by wear');
    default:
      return assertNever(window.limb);
  }
}

/** What is missing for a date: an answer about the past, a day, or a reading. */
function unknownReason(item: ServiceItem, use: CarUse, target: LimitTarget | null): Message {
  if (target !== null) return use.usage === null ? { key: 'reason-no-reading', values: {} } : { key: 'reason-no-distance', values: { since: target.since } };
  if (item.history === 'never-done') return { key: 'reason-no-registration', values: {} };
  return { key: item.history === 'from-purchase' ? 'reason-no-purchase' : 'reason-unknown', values: {} };
}

/** A target that was passed before the present instrument came cannot be read on it. */
function distanceReason(car: Car, use: CarUse, target: LimitTarget): Message {
  const passedBefore = target.metres !== null && instrumentAt(use, target.metres) !== presentInstrument(use);
  return { key: passedBefore ? 'reason-distance-old-instrument' : `reason-distance-${target.from}`, values: valuesOf(car, use, target) };
}

function valuesOf(car: Car, use: CarUse, target: LimitTarget | null): MessageValues {
  return {
    since: target?.since ?? null,
    date: target?.date ?? null,
    target: target?.metres == null ? null : shownWhenReached(use, target.metres, car.unit),
    unit: car.unit,
  };
}
