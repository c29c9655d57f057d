import { obligations } from '../../shared-core/care/obligation.ts';
import { recalls } from '../../shared-core/care/recall.ts';
import { serviceItems } from '../../shared-core/care/service-item.ts';
import { departures } from '../../shared-core/fleet/departure.ts';
import { observations } from '../../shared-core/records/observation.ts';
import { workAmended } from '../../shared-core/records/work-amended.ts';
import { workRecorded } from '../../shared-core/records/work-record.ts';
import { followUps } from '../../shared-core/work/follow-up.ts';
import type { ChangedLately } from '../../shared-core/views/calendar-called-off.ts';
import type { Store } from './store.ts';

const FAMILIES = [serviceItems, obligations, recalls, observations, followUps].map((one) => one.name);
const IN_FAMILIES = `(${FAMILIES.map(() => '?').join(', ')})`;

/**
 * What a calendar may have shown and that has been changed, taken away, recorded as done or withdrawn since an instant, or whose car
 * has left since. What was put once and never touched again is not among it, nor an observation that was never to be looked at again.
 */
export function changedSince(store: Store, since: string): readonly ChangedLately[] {
  const looked = `(one.family <> '${observations.name}' OR EXISTS (SELECT 1 FROM touch AS own JOIN journal_value USING (seq) WHERE own.family = one.family AND own.id = one.id AND role = 'puts' AND name = 'recheckOn' AND value <> 'null'))`;
  const touched = store.prepare<unknown[], ChangedLately>(
    `SELECT one.family, one.id, max(coalesce(gone.at, journal.at)) AS at FROM touch AS one JOIN journal ON journal.seq = one.seq LEFT JOIN journal AS gone ON gone.seq = journal.withdrawn_by
     WHERE one.family IN ${IN_FAMILIES} AND ${looked} AND (gone.at >= ? OR (journal.at >= ? AND (
       (role = 'puts' AND EXISTS (SELECT 1 FROM touch AS first WHERE first.family = one.family AND first.id = one.id AND first.role = 'puts' AND first.seq < one.seq))
       OR (role = 'refers' AND journal.kind IN (?, ?)))))
     GROUP BY one.family, one.id`,
  ).all(...FAMILIES, since, since, workRecorded.kind, workAmended.kind);
  const left = store.prepare<unknown[], ChangedLately>(
    `SELECT one.family, one.id, max(journal.at) AS at FROM fact AS one JOIN touch ON touch.family = ? AND touch.id = one.car AND role = 'puts' JOIN journal ON journal.seq = touch.seq
     WHERE one.family IN ${IN_FAMILIES} AND ${looked} AND journal.at >= ? GROUP BY one.family, one.id`,
  ).all(departures.name, ...FAMILIES, since);
  return [...touched, ...left];
}
