import type { RequestOf } from '../../../../shared-core/contract/contract.ts';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { PlanningPlace } from '../../../../shared-core/views/planning-view.ts';
import { FieldsRead } from '../../../ui/form/read-fields.ts';

/** A place as it is typed. */
export interface PlaceDraft {
  readonly name: string;
  readonly openingMinor: string;
  readonly minuteMinor: string;
  readonly minutesADay: string;
  readonly noticeDays: string;
  readonly closedWeekdays: readonly number[];
  readonly everyCar: boolean;
  readonly cars: readonly string[];
}

/** A place that stands as text; of a new one nothing is known, and what is left empty is taken as for an assumed one. */
export function startPlace(place: PlanningPlace | null, amount: (minor: number) => string): PlaceDraft {
  if (place === null) return { name: '', openingMinor: '', minuteMinor: '', minutesADay: '', noticeDays: '', closedWeekdays: [6, 7], everyCar: true, cars: [] };
  const { name, openingMinor, minuteMinor, minutesADay, noticeDays, closedWeekdays, cars } = place;
  return {
    name,
    openingMinor: amount(openingMinor),
    minuteMinor: amount(minuteMinor),
    minutesADay: String(minutesADay),
    noticeDays: String(noticeDays),
    closedWeekdays,
    everyCar: cars === null,
    cars: cars ?? [],
  };
}

interface WhichPlace {
  readonly id: string | null;
  readonly kind: PlanningPlace['kind'];
  readonly currency: string;
}

/** The request, or the first field that cannot be read. */
export function readPlace(draft: PlaceDraft, { id, kind, currency }: WhichPlace): Result<RequestOf<'place.set'>> {
  const read = new FieldsRead();
  const given = {
    openingMinor: read.moneyOrNull('openingMinor', draft.openingMinor, currency),
    minuteMinor: read.moneyOrNull('minuteMinor', draft.minuteMinor, currency),
    minutesADay: read.numberOrNull('minutesADay', draft.minutesADay),
    noticeDays: read.numberOrNull('noticeDays', draft.noticeDays),
  };
  const stated = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null)) as { readonly [Field in keyof typeof given]?: number };
  return read.whole({ ...(id === null ? {} : { id }), name: draft.name, kind, ...stated, closedWeekdays: [...draft.closedWeekdays], cars: draft.everyCar ? null : [...draft.cars] });
}
