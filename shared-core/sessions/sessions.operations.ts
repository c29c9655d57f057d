import { proposeSessions } from './keep-sessions.ts';
import { removeAccessGroup, setAccessGroup } from './set-access-group.ts';
import { removeCarDays, setCarDays } from './set-car-days.ts';
import { removePlaceDays, setPlaceDays } from './set-place-days.ts';
import { removePlace, setPlace } from './set-place.ts';
import { setPlanSettings } from './set-plan-settings.ts';
import { removeWorthWhile, setWorthWhile } from './set-worth-while.ts';

/** What can be asked of the sessions by name; to keep, move or end one looks at the work in hand, and stands there. */
export const sessionsOperations = {
  'place.set': setPlace,
  'place.remove': removePlace,
  'place-days.set': setPlaceDays,
  'place-days.remove': removePlaceDays,
  'car-days.set': setCarDays,
  'car-days.remove': removeCarDays,
  'plan-settings.set': setPlanSettings,
  'access.set': setAccessGroup,
  'access.remove': removeAccessGroup,
  'worth-while.set': setWorthWhile,
  'worth-while.remove': removeWorthWhile,
  'session.propose': proposeSessions,
} as const;
