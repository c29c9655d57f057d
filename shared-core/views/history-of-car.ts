import type { LocalDate } from '../calendar/local-date.ts';
import type { Completion } from '../care/completion.ts';
import { historyGaps, type HistoryGap } from '../care/history-gaps.ts';
import { obligations } from '../care/obligation.ts';
import { settledOn } from '../care/recall.ts';
import type { Car } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import { wholeDistance } from '../fleet/continuous-distance.ts';
import { readings, type Reading } from '../fleet/reading.ts';
import type { HistoryInput, HistoryItem, HistoryReading, HistoryRecall, HistoryWarranty, HistoryWear } from '../handover/history-input.ts';
import { sayLeftOut } from '../handover/left-out.ts';
import { isWithin, type PackPeriod } from '../handover/pack-period.ts';
import { withheldWords } from '../handover/withheld-words.ts';
import type { Facts } from '../journal/facts.ts';
import { observations } from '../records/observation.ts';
import { hasWords, say, sayDate, sayKind, sayOf } from '../result/words/say.ts';
import { METRES_IN } from '../units/distance.ts';
import { allowanceViews, type AllowanceView } from './allowance-view.ts';
import { roughly } from './allowance-words.ts';
import { careOf, type CarCare, type ItemCare } from './car-care.ts';
import { isCaredFor } from './cared-for.ts';
import { obligationView, windowView } from './due-view.ts';
import { followUpViews } from './follow-ups.ts';
import type { HistoryChoice } from './history-choice.ts';
import { handedPaper, worksOf } from './history-works.ts';
import { leftOutOfPeriod } from './left-out-of-period.ts';
import { leadTimes } from './notice-days.ts';
import { odometerShown } from './odometer-shown.ts';
import { papersOfCar } from './papers-of-car.ts';
import { recallViews, type RecallView } from './recall-view.ts';
import { sayGap, sayInterval } from './say-interval.ts';
import { sayLateBy, sayWindow } from './say-window.ts';
import { statusOfCar } from './status-of-car.ts';
import { wearViews, type WearSeriesView } from './wear-view.ts';
import { typedSaid } from './wear-words.ts';

/** The history of one car as the pack tells it. */
export function historyOfCar(facts: Facts, car: Car, choice: HistoryChoice): HistoryInput {
  const { today, withheld, period } = choice;
  const isShown = (date: LocalDate) => isWithin(period, date);
  const isToldOf = (date: LocalDate | null) => date === null || isShown(date);
  const care = careOf(facts, car, today, leadTimes(facts));
  const odometer = odometerShown(car, care.use, today);
  const wear = wearViews(facts, care.wear, car.unit).flatMap((one) => wearOf(one, isShown));
  const recalls = recallViews(facts, car.id, today).filter((one) => isToldOf(settledOn(one.recall))).map((one) => recallOf(one, withheld));
  const leftOut = leftOutOfPeriod(facts, car.id, isShown);
  return {
    today,
    sample: choice.sample,
    period, withheld,
    unprinted: 0,
    leftOut,
    withheldFields: [...withheld].sort().map(withheldWords),
    cover: choice.cover,
    previous: choice.previous,
    papersLeftOut: choice.papersLeftOut,
    currency: choice.currency,
    carWithheldBefore: care.earlier.get(car.id)?.withheld ?? [],
    withheldBefore: [...new Set([...care.earlier.values()].flatMap((one) => one.withheld))].sort().map(withheldWords),
    car: { ...car, vin: withheld.has('vin') ? null : car.vin, registration: withheld.has('registration') ? null : car.registration },
    odometer: odometer === null ? null : sayOf('history-odometer-range', { low: odometer.low, high: odometer.high, likely: odometer.likely, unit: odometer.unit }),
    status: statusOfCar(facts, care, choice, { wear, recalls, leftOut, on: nowOf(facts, care, today).date }),
    instruments: care.use.instruments.map(({ date, estimated, firstShown, unit }) => ({
      date, estimated,
      text: sayOf(estimated ? 'history-instrument-estimated' : 'history-instrument-replaced', { date, value: Math.round(firstShown / METRES_IN[unit]), unit }),
    })),
    readings: facts.ofCar(readings, car.id).filter((one) => isShown(one.date)).map((reading) => readingOf(reading, care)).sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
    // What was only meant to be done once is no part of the history until it is.
    items: care.items.filter((one) => isCaredFor(one) || one.completions.length > 0).map((one) => itemOf(one, care, period, nowOf(facts, care, today))),
    obligations: facts.ofCar(obligations, car.id).map((one) => obligationView(one, today)).map(({ name, on, late }) => ({ name, lastValidDay: on, late })),
    recalls,
    warranties: allowanceViews(facts, car, care.use, today).filter((one) => one.kind === 'warranty').map(warrantyOf),
    records: worksOf(facts, care, choice),
    observations: facts.ofCar(observations, car.id).filter((one) => isShown(one.date)).map((one) => ({ ...one, text: withheld.has('text') ? sayOf('history-text-withheld') : one.text })),
    followUps: followUpViews(facts, car, care.use, today).filter((one) => isShown(one.followUp.madeOn)).map((one) => ({ text: withheld.has('text') ? sayOf('history-text-withheld') : one.followUp.text, when: one.text })),
    wear,
    papers: papersOfCar(facts, car.id, isShown).map((id) => handedPaper(facts, id, choice)),
    treeSize: choice.treeSize,
    root: choice.root,
    keyFingerprint: choice.keyFingerprint,
  };
}

function readingOf(reading: Reading, { car, use }: CarCare): HistoryReading {
  return {
    date: reading.date,
    value: reading.typed.value,
    unit: reading.typed.unit,
    instrumentSince: use.instruments.find((one) => one.id === reading.instrument)?.date ?? null,
    whole: reading.standing === 'accepted' ? Math.round(wholeDistance(reading, use.instruments) / METRES_IN[car.unit]) : null,
    source: say({ key: `source-${reading.source}`, values: {} }),
    standing: reading.standing,
  };
}

/** Where not the whole history is shown, an item tells of the days shown, and that it is not told of those before or after. */
function itemOf(one: ItemCare, { car }: CarCare, period: PackPeriod, now: Completion): HistoryItem {
  const completions = one.completions.filter((done) => isWithin(period, done.date));
  const gaps = historyGaps(one.item, car, completions, period.to === null ? now : null);
  // That something was never done, or is wholly unknown, is said of the whole history only.
  const isTold = (gap: HistoryGap) => (gap.kind === 'months' || gap.kind === 'distance' ? isWithin(period, gap.from) : period.from === null && (period.to === null || (gap.kind === 'unknown-before' && gap.date !== null)));
  const window = windowView(one, car.unit);
  return {
    name: one.item.name,
    interval: sayInterval(one.item.interval),
    lastDone: completions.at(-1)?.date ?? null,
    timesDone: completions.length,
    state: say({ key: isCaredFor(one) ? `state-${window.state}` : 'state-once', values: {} }),
    due: !isCaredFor(one) ? '' : window.lateBy === null ? sayWindow(window) : sayLateBy(window.lateBy),
    late: window.state === 'late',
    notShown: [...(period.from === null ? [] : [sayOf('history-not-before', { date: period.from })]), ...(period.to === null ? [] : [sayOf('history-not-after', { date: period.to })])],
    gaps: gaps.filter(isTold).map((gap) => sayGap(gap, car.unit)),
  };
}

/** Where the car stands: today, or the day it left, at its last accepted reading. */
function nowOf(facts: Facts, { car, use }: CarCare, today: LocalDate): Completion {
  const left = facts.get(departures, car.id)?.on ?? today;
  return { date: left < today ? left : today, metres: use.points.at(-1)?.metres ?? null, estimated: false };
}

/** A series by what it measures; what was measured on days that are not shown is not told. */
function wearOf({ what, name, place, wheel, points, limits }: WearSeriesView, isShown: (date: LocalDate) => boolean): HistoryWear[] {
  const counted = points.filter(({ part }) => part === 'counts' || part === 'worse-that-day').map((one) => one.measurement);
  const shown = counted.filter((one) => isShown(one.date));
  const [first, newest] = [shown[0], shown.at(-1)];
  if (first === undefined || newest === undefined) return [];
  const [limit] = limits;
  const plain = [name ?? sayKind('measured', what), wheel?.name ?? null, place === null ? null : sayKind('at', place)].filter((part) => part !== null);
  return [{
    what: [...new Set(plain)].join(', '),
    times: shown.length,
    from: first.date,
    newest: `${typedSaid(newest.typed)}, ${sayDate(newest.date)}`,
    newestOn: newest.date,
    isLimited: limit !== undefined,
    limit: limit === undefined ? sayOf('history-no-limit') : typedSaid(limit.limit),
    verdict: limit === undefined ? '' : reckonedWith(counted.length - shown.length, limit.words.text),
  }];
}

function reckonedWith(hidden: number, verdict: string): string {
  return hidden === 0 ? verdict : sayOf('history-wear-reckoned', { measurements: sayLeftOut({ measurements: hidden }), verdict });
}

function recallOf({ recall, state, late }: RecallView, withheld: ReadonlySet<string>): HistoryRecall {
  const { number, what, how, doneOn, doneBy, nextOn } = recall;
  return { number, what, state, late, how, doneOn, doneBy: withheld.has('doneBy') ? null : doneBy, nextOn };
}

/** What is foreseen of a warranty hangs on how the present keeper drives: the next one is told only how it stands. */
function warrantyOf({ name, allowance, state, allowed, unit, left }: AllowanceView): HistoryWarranty {
  const each = allowance.every === 'year' ? '-year' : '';
  const holds = { allowed, unit, from: allowance.from };
  const now = `history-warranty-${state}`;
  return {
    name,
    holds: allowance.to === null ? sayOf(`history-warranty-holds${each}`, holds) : sayOf(`history-warranty-holds${each}-until`, { ...holds, to: allowance.to }),
    now: hasWords(now) ? sayOf(now) : sayOf('history-warranty-left', { left: roughly(left ?? 0), unit }),
  };
}
