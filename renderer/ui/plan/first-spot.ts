import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import type { Spot } from './move-store.ts';

/** Where a task that stands in no session is tried first: in the next one that stands, else today at the first place. */
export function firstSpot({ sessions, places, today }: Pick<SessionsView, 'sessions' | 'places' | 'today'>): Spot {
  const next = sessions.find((one) => !one.passed);
  return next === undefined ? { day: today, place: places[0]?.id ?? '' } : { day: next.day, place: next.place };
}
