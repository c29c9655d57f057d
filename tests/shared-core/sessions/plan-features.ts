import type { Result } from '../../../shared-core/result/result.ts';
import type { PlanAnswer } from '../../../shared-core/sessions/plan-answer.ts';
import type { PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';

type Written = PlanInstanceAsWritten;
type Session = PlanAnswer['sessions'][number];

/** In how many of some plans each awkward thing matters to the best plan, so that a storm of them says something. */
export function planFeatures(solved: readonly { readonly written: Written; readonly answer: Result<PlanAnswer> }[]): Readonly<Record<string, number>> {
  const plans = solved.flatMap(({ written, answer }) => (answer.ok ? [{ written, ...answer.value }] : []));
  const count = (is: (plan: (typeof plans)[number]) => boolean) => plans.filter(is).length;
  const refusedWith = (code: string) => solved.filter(({ answer }) => !answer.ok && answer.refusal.code === code).length;
  const some = (is: (session: Session, written: Written) => boolean) => count(({ sessions, written }) => sessions.some((session) => is(session, written)));
  const placeOf = (written: Written, { place }: Session) => written.places.find(({ id }) => id === place);
  return {
    'cannot be done': refusedWith('plan-must-do-no-day') + refusedWith('plan-must-do-too-long'),
    'cannot be done together': refusedWith('plan-must-do-not-all'),
    'a closed day': count(({ written }) => written.places.some(({ closed = [] }) => closed.length > 0)),
    'a car that is away': count(({ written }) => (written.cars ?? []).some(({ closed = [] }) => closed.some((date) => written.days.includes(date)))),
    'a car that is away, so that another is not worked on': count(({ sessions, written }) => (written.neverAll ?? []).some((list) => written.days.some((date) => {
      const gone = list.filter((car) => (written.cars ?? []).some(({ id, away = [] }) => id === car && away.includes(date))).length;
      return gone > 0 && list.length > 1 && apartOn(written, sessions, date, list) + gone === list.length - 1;
    }))),
    'shared access': some((session, written) => (written.access ?? []).some((group) => group.minutes > 0 && tasksOf(written, session).filter((task) => task.car === group.car && (task.access ?? []).includes(group.id)).length > 1)),
    'done because it must be': some((session, written) => tasksOf(written, session).some((task) => task.mustDo === true && task.leftUndoneMinor < (task.costMinor[session.place]?.[written.days.indexOf(session.day)] ?? 0))),
    'minutes that cost': some((session, written) => (placeOf(written, session)?.minuteMinor ?? 0) > 0 && session.minutes > 0),
    'a day with minutes of its own': some((session, written) => placeOf(written, session)?.minutesOn?.[session.day] !== undefined),
    'a full day': some((session, written) => session.minutes > 0 && session.minutes === (placeOf(written, session)?.minutesOn?.[session.day] ?? placeOf(written, session)?.minutesADay)),
    'something left': count(({ left }) => left.length > 0),
    'something placed': count(({ sessions }) => sessions.length > 0),
    'two places on a day': count(({ sessions }) => new Set(sessions.map(({ day }) => day)).size < sessions.length),
    'cars that must not all be apart': count(({ sessions, written }) => (written.neverAll ?? []).some((list) => written.days.some((date) => apartOn(written, sessions, date, list) === list.length - 1 && list.length > 1))),
  };
}

function tasksOf(written: Written, session: Session): Written['tasks'] {
  return written.tasks.filter(({ id }) => session.tasks.includes(id));
}

/** How many cars of a list are worked on, on a day. */
function apartOn(written: Written, sessions: readonly Session[], date: unknown, list: readonly string[]): number {
  const cars = new Set(sessions.filter(({ day }) => day === date).flatMap((session) => tasksOf(written, session).map(({ car }) => car)));
  return list.filter((car) => cars.has(car)).length;
}
