import { accessNamed, type AccessGroup } from './access-group.ts';

/** What of a task the time of a session is made of. */
export interface TimedTask {
  readonly car: string;
  readonly minutes: number;
  /** What must be opened up to reach it, by the names the keeper gave. */
  readonly access: readonly string[];
}

/**
 * The minutes of tasks done together: their own, and those of each access of a car once, however often and in whatever spelling it is named.
 *
 * @example minutesTogether([{ id: 'w', car: 'pip', name: 'wheels off', minutes: 30 }], [{ car: 'pip', minutes: 50, access: ['wheels off', 'Wheels off'] }]) //=> 80
 */
export function minutesTogether(groups: readonly AccessGroup[], tasks: readonly TimedTask[]): number {
  const opened = tasks.flatMap(({ car, access }) => access.flatMap((name) => accessNamed(groups.filter((group) => group.car === car), name) ?? []));
  const once = new Map(opened.map((group) => [group.id, group.minutes]));
  return [...tasks.map((task) => task.minutes), ...once.values()].reduce((sum, minutes) => sum + minutes, 0);
}
