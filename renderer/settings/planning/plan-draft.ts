import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PlanningView } from '../../../shared-core/views/planning-view.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';

/** How one plans, as it is typed. */
export interface PlanDraft {
  readonly horizonDays: string;
  readonly workWeekdays: readonly number[];
  readonly preferredMinutesADay: string;
  readonly unknownMinutes: string;
  readonly safety: string;
  readonly damage: string;
  readonly comfort: string;
}

/** The settings that stand, as text; `amount` writes minor units. */
export function startPlan({ horizonDays, workWeekdays, preferredMinutesADay, unknownMinutes, lateMinorADay }: PlanningView['settings'], amount: (minor: number) => string): PlanDraft {
  return {
    horizonDays: String(horizonDays),
    workWeekdays,
    preferredMinutesADay: preferredMinutesADay === null ? '' : String(preferredMinutesADay),
    unknownMinutes: String(unknownMinutes),
    safety: amount(lateMinorADay.safety),
    damage: amount(lateMinorADay.damage),
    comfort: amount(lateMinorADay.comfort),
  };
}

/** The request, or the first field that cannot be read. */
export function readPlan(draft: PlanDraft, currency: string): Result<RequestOf<'plan-settings.set'>> {
  const read = new FieldsRead();
  return read.whole({
    horizonDays: read.number('horizonDays', draft.horizonDays, '90'),
    workWeekdays: [...draft.workWeekdays],
    preferredMinutesADay: read.numberOrNull('preferredMinutesADay', draft.preferredMinutesADay),
    unknownMinutes: read.number('unknownMinutes', draft.unknownMinutes, '60'),
    lateMinorADay: {
      safety: read.money('lateMinorADay.safety', draft.safety, currency),
      damage: read.money('lateMinorADay.damage', draft.damage, currency),
      comfort: read.money('lateMinorADay.comfort', draft.comfort, currency),
    },
  });
}
