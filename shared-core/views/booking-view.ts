import { z } from 'zod';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { cars, type Car } from '../fleet/car.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { idSchema } from '../result/id.ts';
import { compareNames } from '../result/compare-names.ts';
import { ok, type Message } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import { isPinned } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { amountText } from '../units/money.ts';
import type { Booking, BookingRound, Quote } from '../work/booking.ts';
import { doneByGarage, roundsOver } from '../work/booking-rounds.ts';
import { bookingState, isUnderway } from '../work/booking-state.ts';
import { garageSession, type GarageSession } from '../work/find-booking.ts';
import { quoteSum } from '../work/quote-sum.ts';
import { wantedOfTasks } from '../work/wanted-of-tasks.ts';
import { requestFigures } from './booking-figures.ts';
import { bookingNotes } from './booking-notes.ts';
import { offersBring, offersUnwanted } from './booking-offers.ts';
import { outcomeOf } from './booking-outcome.ts';
import { stateMessage } from './booking-said.ts';
import { requestSubject, requestText } from './booking-text.ts';
import { bookingViewSchema, type BookingView, type QuoteView, type RequestCar } from './booking-view-schema.ts';
import { careOf } from './car-care.ts';
import { leadTimes, type LeadTimes } from './notice-days.ts';
import { said } from './plan-said.ts';

/** What is asked of a garage for one session: proposed where nothing was written yet, then what stands, its quotes, and what came back. */
export const showBooking = ask({
  request: z.strictObject({ session: idSchema }),
  reply: bookingViewSchema,
  answer: (standing, request, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const found = garageSession(facts, request.session);
    if (!found.ok) return found;
    return ok(viewOf(facts, found.value, household.value.currency, today));
  },
});

function viewOf(facts: Facts, found: GarageSession, currency: string, today: LocalDate): BookingView {
  const { session, place, booking } = found;
  const { id, day, state: sessionState } = session;
  const here = booking?.place === place.id ? booking : null;
  const state = bookingState(booking, session);
  const askDay = state === 'not-asked' && place.kind === 'garage' ? addDays(day, -place.noticeDays) : null;
  const past = askDay !== null && askDay < today;
  const nameOf = (quote: Quote) => quote.by ?? place.name;
  const leads = leadTimes(facts);
  return {
    today, currency,
    session: { id, day, place: place.id, placeName: place.name, placeKind: place.kind, state: sessionState, passed: day < today },
    state,
    said: said(stateMessage(state, here, session, askDay, past)),
    askBy: askDay === null ? null : { day: askDay, noticeDays: place.noticeDays, past },
    open: place.kind === 'garage' && isPinned(session),
    booking: here,
    elsewhere: booking === null || here !== null ? null : { placeName: standingPlaces(facts).find((one) => one.place.id === booking.place)?.place.name ?? booking.place, underway: isUnderway(booking) },
    notes: booking === null ? [] : bookingNotes(facts, session, booking).map(said),
    cars: carsOf(facts, found, here).map((car) => requestCar(facts, found, here, car, today, leads)),
    quotes: (here?.quotes ?? []).map((quote) => quoteView(quote, here, nameOf(quote), currency, today)),
    outcome: here === null ? null : outcomeOf(facts, here, nameOf, currency),
    earlier: (here === null ? roundsOver(booking) : (here.earlier ?? [])).map((round) => earlierOf(facts, round, currency)),
  };
}

function earlierOf(facts: Facts, round: BookingRound, currency: string): BookingView['earlier'][number] {
  const placeName = standingPlaces(facts).find((one) => one.place.id === round.place)?.place.name ?? round.place;
  const day = round.cameBack?.doneOn ?? round.booked?.day ?? null;
  const state = bookingState(round, round);
  return {
    placeName, day, state,
    said: said(stateMessage(state, round, { day: day ?? '' }, null, false)),
    paper: round.cameBack?.paper ?? null,
    outcome: outcomeOf(facts, round, (quote) => quote.by ?? placeName, currency),
  };
}

function carsOf(facts: Facts, { session }: GarageSession, booking: Booking | null): readonly Car[] {
  const ids = new Set([...wantedOfTasks(facts, session), ...(booking?.wanted ?? [])].map((one) => one.car));
  return [...ids].flatMap((id) => facts.get(cars, id) ?? []).sort((a, b) => compareNames(a.name, b.name));
}

function requestCar(facts: Facts, { session, place, booking: last }: GarageSession, booking: Booking | null, car: Car, today: LocalDate, leads: LeadTimes): RequestCar {
  const care = careOf(facts, car, today, leads);
  const done = doneByGarage(last);
  const reading = care.use.points.at(-1)?.reading ?? null;
  const ofCar = <Line extends { readonly car: string }>(lines: readonly Line[] | undefined) => (lines ?? []).filter((one) => one.car === car.id);
  const plain = {
    car: car.id, carName: car.name, description: car.description, registration: car.registration,
    odometer: reading === null ? null : { value: reading.typed.value, unit: reading.typed.unit, on: reading.date },
    figures: requestFigures(facts, car, session),
    wanted: booking === null ? ofCar(wantedOfTasks(facts, session)).filter(({ task }) => task === null || !done.has(taskKey(task))).map((one) => ({ ...one, id: null })) : ofCar(booking.wanted),
    unwanted: ofCar(booking?.unwanted),
    bring: ofCar(booking?.bring),
    offersUnwanted: offersUnwanted(care, session),
    offersBring: offersBring(facts, session, car.id, today),
  };
  const head = { placeName: place.name, day: session.day, booking, digitalRecord: booking?.digitalRecord ?? true };
  return { ...plain, subject: requestSubject(head, plain), text: requestText(head, plain) };
}

function quoteView(quote: Quote, booking: Booking | null, byName: string, currency: string, today: LocalDate): QuoteView {
  const { totalMinor, linesMinor, differs } = quoteSum(quote);
  const booked = booking?.booked?.quote === quote.id;
  const over = quote.validUntil !== null && quote.validUntil < today && booking?.booked == null && booking?.cameBack == null;
  const amount = (minor: number | null) => (minor === null ? null : `${amountText(minor, currency)} ${currency}`);
  const covered = new Set(quote.lines.flatMap((one) => one.covers));
  const leaves = quote.lines.length === 0 ? [] : (booking?.wanted ?? []).filter((one) => !covered.has(one.id));
  const notes: Message[] = [
    ...(differs ? [{ key: 'quote-differs', values: { lines: amount(linesMinor), total: amount(totalMinor) } }] : []),
    ...(over ? [{ key: 'quote-over', values: { day: quote.validUntil } }] : []),
    ...(totalMinor === null ? [{ key: 'quote-unknown-sum', values: {} }] : []),
    ...(leaves.length === 0 ? [] : [{ key: 'quote-leaves', values: { text: leaves.map((one) => one.text).join('; ') } }]),
  ];
  return { ...quote, byName, sumMinor: totalMinor, over, booked, notes: notes.map(said) };
}
