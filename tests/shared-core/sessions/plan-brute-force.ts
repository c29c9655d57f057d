import type { PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';

type Written = PlanInstanceAsWritten;
type WrittenTask = Written['tasks'][number];

/** A task, the number of its day and its place. */
interface Choice {
  readonly task: WrittenTask;
  readonly day: number;
  readonly place: Written['places'][number];
}

/**
 * The least that a small plan costs, by trying every day and place for every task, and leaving it out; null where no way does all that must
 * be done. It shares no code and no idea with the plan solver. No cost is negative, so a part of a plan that costs as much as a whole one
 * is not gone on with.
 *
 * Source: the rules of a bare plan as the headless commands state them.
 */
export function bruteForcePlan(instance: Written): number | null {
  let best = Infinity;
  const tryFrom = (at: number, chosen: readonly Choice[], leftMinor: number): void => {
    const money = moneyOf(instance, chosen);
    if (money === null || leftMinor + money >= best) return;
    const task = instance.tasks[at];
    if (task === undefined) {
      best = leftMinor + money;
      return;
    }
    for (const choice of choicesOf(instance, task)) tryFrom(at + 1, [...chosen, choice], leftMinor);
    if (task.mustDo !== true) tryFrom(at + 1, chosen, leftMinor + task.leftUndoneMinor);
  };
  tryFrom(0, [], 0);
  return best === Infinity ? null : best;
}

/** Every day and place that takes the task, closed days and cars that are away aside. */
function choicesOf({ days, places, cars = [] }: Written, task: WrittenTask): readonly Choice[] {
  return places.flatMap((place) => days.flatMap((date, day): readonly Choice[] => {
    const shut = (place.closed ?? []).includes(date) || cars.some((car) => car.id === task.car && (car.closed ?? []).includes(date));
    const cost = task.costMinor[place.id]?.[day];
    return shut || cost === null || cost === undefined ? [] : [{ task, day, place }];
  }));
}

/** What the sessions of a choice cost; null where a day is too full, or takes every car of a list of which one must stay. */
function moneyOf({ days, access = [], cars = [], neverAll = [] }: Written, chosen: readonly Choice[]): number | null {
  let money = 0;
  const seen = new Set<string>();
  for (const { day, place } of chosen) {
    const name = `${day} ${place.id}`;
    if (seen.has(name)) continue;
    seen.add(name);
    const held = chosen.filter((other) => other.day === day && other.place === place).map((other) => other.task);
    const opened = access.filter((group) => held.some((task) => task.car === group.car && (task.access ?? []).includes(group.id)));
    let minutes = 0;
    for (const task of held) minutes += task.minutes;
    for (const group of opened) minutes += group.minutes;
    if (minutes > (place.minutesOn?.[String(days[day])] ?? place.minutesADay)) return null;
    money += place.openingMinor + minutes * (place.minuteMinor ?? 0);
    for (const task of held) money += task.costMinor[place.id]?.[day] ?? 0;
    const apart = new Set(chosen.filter((other) => other.day === day).map((other) => other.task.car));
    const drives = (car: string) => !apart.has(car) && !cars.some(({ id, away = [] }) => id === car && away.includes(String(days[day])));
    if (neverAll.some((list) => list.some((car) => apart.has(car)) && !list.some(drives))) return null;
  }
  return money;
}
