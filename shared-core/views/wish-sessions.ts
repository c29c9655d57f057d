import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { wishNeeds } from '../ledger/wish-aside.ts';
import type { WishSaving } from '../ledger/wish-savings.ts';
import type { Wish } from '../ledger/wish.ts';
import type { Message } from '../result/result.ts';
import { accessGroups, accessNamed } from '../sessions/access-group.ts';
import { carDays } from '../sessions/car-days.ts';
import { minutesTogether, type TimedTask } from '../sessions/minutes-together.ts';
import { timedTask } from '../sessions/over-minutes.ts';
import { holdsDay } from '../sessions/place-days.ts';
import { standingPlaces, type Place } from '../sessions/place.ts';
import { money } from '../sessions/plan-why.ts';
import { planSettings } from '../sessions/plan-settings.ts';
import { standingBoard } from '../sessions/session-board.ts';
import { isPinned, type Session } from '../sessions/session.ts';
import { findTask } from '../sessions/task-ref.ts';
import { minutesOf } from '../sessions/why-not-there.ts';
import type { LeadTimes } from './notice-days.ts';
import { openTasks } from './plan-input.ts';
import { said, type Said } from './plan-said.ts';

/** A session that a wish could join, and what that saves; where it cannot, why. Nothing is ever moved for it. */
export interface WishSession {
  readonly session: string;
  readonly day: LocalDate;
  readonly place: string;
  readonly placeName: string;
  /** It is kept already; one that is only proposed is to be kept first. */
  readonly kept: boolean;
  readonly fits: boolean;
  readonly savesMinor: number;
  /** Minutes of opening up that are shared with the tasks there. */
  readonly sharedMinutes: number;
  /** It is paid for by that day. */
  readonly paidForByThen: boolean;
  readonly why: Said;
}

/** What the sessions of a wish are told from. */
export interface WishSessionSources {
  readonly facts: Facts;
  readonly today: LocalDate;
  readonly currency: string;
  readonly leads: LeadTimes;
}

/** The sessions of a wish's car at a place of its kind, kept or proposed, by day. One that stands in a kept session already joins no other. */
export function wishSessions(sources: WishSessionSources, wish: Wish, saving: WishSaving | null): readonly WishSession[] {
  const { facts, today } = sources;
  const board = [...standingBoard(facts, today).values()].map((one) => ({ session: one, tasks: openTasks(facts, one) })).filter(({ tasks }) => tasks.length > 0);
  const holds = (tasks: Session['tasks']) => wish.item !== null && tasks.some((task) => task.kind === 'item' && task.id === wish.item);
  if (board.some(({ session, tasks }) => isPinned(session) && holds(tasks))) return [];
  const places = new Map(standingPlaces(facts).map(({ place }) => [place.id, place]));
  return board
    .flatMap(({ session, tasks }) => {
      const place = places.get(session.place);
      const isOfCar = tasks.some((task) => carOf(facts, task) === wish.car);
      return place === undefined || place.kind !== wish.place || !isOfCar || holds(tasks) ? [] : [joining(sources, wish, saving, { session, tasks, place })];
    })
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.session < b.session ? -1 : 1));
}

interface Joined {
  readonly session: Session;
  readonly tasks: Session['tasks'];
  readonly place: Place;
}

function joining(sources: WishSessionSources, wish: Wish, saving: WishSaving | null, joined: Joined): WishSession {
  const { facts, currency } = sources;
  const { session, tasks, place } = joined;
  const { settings } = planSettings(facts);
  const there = tasks.flatMap((task) => timedTask(facts, task, settings.unknownMinutes) ?? []);
  const own: TimedTask = { car: wish.car, minutes: wish.minutes ?? settings.unknownMinutes, access: wish.access };
  const groups = facts.all(accessGroups);
  const together = minutesTogether(groups, [...there, own]);
  const sharedMinutes = minutesTogether(groups, there) + minutesTogether(groups, [own]) - together;
  const savesMinor = place.openingMinor + sharedMinutes * place.minuteMinor;
  const most = minutesOf({ settings }, place);
  const not = together > most ? { key: 'wish-no-room', values: { minutes: together, most } } : whyNot(sources, wish, joined);
  const values = { saves: money(savesMinor, currency), opening: money(place.openingMinor, currency), shared: sharedMinutes, access: sharedAccess(facts, wish, there), task: tasks.length };
  return {
    session: session.id, day: session.day, place: place.id, placeName: place.name, kept: isPinned(session), fits: not === null, savesMinor: not === null ? savesMinor : 0, sharedMinutes,
    paidForByThen: saving?.paidForOn != null && saving.paidForOn <= session.day,
    why: said(not ?? { key: sharedMinutes === 0 ? 'wish-joins-day' : 'wish-joins-day-and-access', values }),
  };
}

/** Its car is needed or away then, is not taken there, or its parts cannot be here the day before. */
function whyNot({ facts, today, leads }: WishSessionSources, wish: Wish, { session, place }: Joined): Message | null {
  if (place.cars !== null && !place.cars.includes(wish.car)) return { key: 'wish-car-not-there', values: { place: place.name } };
  if (facts.ofCar(carDays, wish.car).some((one) => holdsDay(one, session.day))) return { key: 'wish-car-taken', values: { day: session.day } };
  const lacking = wishNeeds(facts, wish).filter((need) => need.lacking > 0);
  const first = lacking.reduce<LocalDate>((last, need) => { const here = addDays(today, leads.get(need.specification) ?? 0); return here > last ? here : last; }, today);
  return lacking.length > 0 && first >= session.day && first > today ? { key: 'wish-parts-too-late', values: { date: first } } : null;
}

function sharedAccess(facts: Facts, wish: Wish, there: readonly TimedTask[]): string {
  const groups = facts.ofCar(accessGroups, wish.car);
  const opened = new Set(there.filter((task) => task.car === wish.car).flatMap((task) => task.access.flatMap((name) => accessNamed(groups, name)?.id ?? [])));
  return wish.access.filter((name) => opened.has(accessNamed(groups, name)?.id ?? '')).join(', ');
}

function carOf(facts: Facts, task: Session['tasks'][number]): string | null {
  const found = findTask(facts, task);
  return found.ok ? found.value.car : null;
}

/** The session in which a planned wish stands, what is kept before what is proposed. */
export function sessionOfWish(facts: Facts, wish: Wish, today: LocalDate): Session | null {
  if (wish.item === null || facts.get(serviceItems, wish.item) === null) return null;
  const holding = [...standingBoard(facts, today).values()].filter((one) => openTasks(facts, one).some((task) => task.kind === 'item' && task.id === wish.item));
  return holding.sort((a, b) => Number(isPinned(b)) - Number(isPinned(a)) || (a.day < b.day ? -1 : 1))[0] ?? null;
}
