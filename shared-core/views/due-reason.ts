import { assertNever, must } from '../result/assert.ts';
import type { DueWindow } from '../care/due-window.ts';
import type { LimitTarget } from '../care/limit-target.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { Message, MessageValues } from '../result/result.ts';
import { shownOnInstrument } from './odometer-shown.ts';

/** Why an item stands where it stands: which limb governs, and from what it is counted. */
export function dueReason(item: ServiceItem, car: Car, use: CarUse, target: LimitTarget | null, window: DueWindow): Message {
  if (window.state === 'unknown') return { key: target === null ? 'reason-unknown' : 'reason-no-reading', values: {} };
  if (window.limb === null || (window.limb === 'distance' && window.earliest === null)) return { key: 'reason-not-foreseeable', values: valuesOf(car, use, target) };
  switch (window.limb) {
    case 'printed-date':
      return { key: 'reason-printed-date', values: { date: must(item.printedDate, 'printed date') } };
    case 'time':
      return { key: `reason-time-${must(target, 'limit').from}`, values: valuesOf(car, use, target) };
    case 'distance':
      return { key: `reason-distance-${must(target, 'limit').from}`, values: valuesOf(car, use, target) };
    case 'wear':
      return { key: 'reason-wear', values: {} };
    default:
      return assertNever(window.limb);
  }
}

function valuesOf(car: Car, use: CarUse, target: LimitTarget | null): MessageValues {
  return {
    since: target?.since ?? null,
    date: target?.date ?? null,
    target: target?.metres == null ? null : shownOnInstrument(use, target.metres, car.unit),
    unit: car.unit,
  };
}
