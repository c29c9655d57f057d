import type { LocalDate } from '../calendar/local-date.ts';
import { isOnce } from '../care/limit.ts';
import { measurements } from '../care/measurement.ts';
import { obligations } from '../care/obligation.ts';
import { distanceOn } from '../fleet/known-distance.ts';
import { readTyreDateCode, tyreAge } from '../fleet/tyre-date-code.ts';
import { wheels } from '../fleet/wheel.ts';
import type { HistoryInput, HistoryWear } from '../handover/history-input.ts';
import { historyStatus, type HistoryStatus } from '../handover/history-status.ts';
import { isWithin, type PackPeriod } from '../handover/pack-period.ts';
import type { StatusElement, StatusInput, StatusItem, StatusPart, StatusSince } from '../handover/status-input.ts';
import type { Facts } from '../journal/facts.ts';
import { wishes } from '../ledger/wish.ts';
import { sayOf } from '../result/words/say.ts';
import { METRES_IN } from '../units/distance.ts';
import type { CarCare, ItemCare } from './car-care.ts';
import { obligationView } from './due-view.ts';
import type { HistoryChoice } from './history-choice.ts';
import { inspectionsOf } from './status-inspections.ts';

/** What of a history is told already and its status is told from. */
interface Told extends Pick<HistoryInput, 'wear' | 'recalls' | 'leftOut'> {
  readonly on: LocalDate;
}

/** How a car stands on a day, as its pack tells it: nothing that is withheld, or that happened on a day that is not shown, is told of it. */
export function statusOfCar(facts: Facts, care: CarCare, choice: HistoryChoice, { wear, recalls, leftOut, on }: Told): HistoryStatus {
  const { car, use } = care;
  const { period } = choice;
  const known = { points: use.points, usage: use.usage, firstRegistered: car.firstRegistered };
  const now = distanceOn(known, on);
  const read = use.points.findLast((point) => isWithin(period, point.date) && point.date <= on) ?? null;
  const inUnit = (metres: number) => Math.round(metres / METRES_IN[car.unit]);
  const hidden: StatusElement[] = [...(period.to !== null && leftOut.readings > 0 ? ['whole-distance' as const] : []), ...(leftOut.recalls > 0 ? ['recalls' as const] : []), ...(leftOut.records > 0 ? ['changes' as const] : [])];
  const since = (date: LocalDate, metres: number | null, isEstimated: boolean): StatusSince => ({
    on: date,
    distance: now === null || metres === null ? null : { value: inUnit(Math.max(0, now.metres - metres)), estimated: now.estimated || isEstimated },
  });
  const wished = new Set(facts.all(wishes).filter((wish) => wish.car === car.id).map((wish) => wish.item));
  const isChange = ({ item }: ItemCare) => wished.has(item.id) || isOnce(item.interval);
  return historyStatus({
    on, hidden, recalls,
    unit: car.unit,
    lastRead: read === null ? null : { on: read.date, whole: inUnit(read.metres) },
    likely: now === null ? null : inUnit(now.metres),
    instrumentGuessed: use.instruments.some((one) => one.estimated),
    parts: partsOf(facts, care, choice, wear),
    items: care.items.filter((one) => !isChange(one)).map((one) => itemOf(one, care, period, since)),
    inspections: inspectionsOf(facts, care, choice),
    changes: changesOf(care, care.items.filter(isChange), period),
  });
}

/** What has a day printed on it, what is measured or to be measured, and the tyres by their date codes. */
function partsOf(facts: Facts, care: CarCare, { today, period }: HistoryChoice, wear: readonly HistoryWear[]): StatusPart[] {
  const { id } = care.car;
  const measured = facts.ofCar(measurements, id).filter((one) => isWithin(period, one.date));
  const unmeasured = care.items.filter(({ item: { measure } }) => measure !== null && !measured.some((one) => one.what === measure.kind && one.name === measure.name));
  return [
    ...care.items.flatMap(({ item }): StatusPart[] => (item.printedDate === null ? [] : [{ kind: 'dated', name: item.name, until: item.printedDate }])),
    ...facts.ofCar(obligations, id).filter((one) => one.kind === 'printed-expiry').map((one): StatusPart => ({ kind: 'dated', name: obligationView(one, today).name, until: one.lastValidDay })),
    ...wear.map((one): StatusPart => ({ kind: 'measured', name: one.what, on: one.newestOn, newest: one.newest, limit: one.isLimited ? one.limit : null, verdict: one.verdict })),
    ...unmeasured.map(({ item }): StatusPart => ({ kind: 'not-measured', name: item.name })),
    ...facts.ofCar(wheels, id).map((one): StatusPart => ({ kind: 'tyre', name: sayOf('status-tyre', { wheel: one.name }), made: one.dateCode === null ? null : madeIn(one.dateCode, today) })),
  ];
}

/** When a tyre was made, in words; null where its code cannot be read. @example madeIn('2612', '2022-06-30') //=> 'in the week from 24 Jun 2012, 120 months ago' */
function madeIn(code: string, today: LocalDate): string | null {
  const read = readTyreDateCode(code, today);
  if (!read.ok) return null;
  const { leastMonths, mostMonths } = tyreAge(read.value, today);
  const ago = leastMonths === mostMonths ? sayOf('status-months-ago', { n: leastMonths }) : sayOf('status-months-ago-range', { least: leastMonths, most: mostMonths });
  return read.value.state === 'week' ? sayOf('status-made-week', { date: read.value.week.from, ago }) : sayOf('status-made-decade', { ago });
}

function itemOf({ item, completions }: ItemCare, { car }: CarCare, period: PackPeriod, since: (date: LocalDate, metres: number | null, isEstimated: boolean) => StatusSince): StatusItem {
  const done = completions.findLast((one) => isWithin(period, one.date)) ?? null;
  const last = done === null ? null : since(done.date, done.metres, done.estimated);
  const isNew = done === null && item.anchor.kind === 'completion' && item.history === 'never-done' && car.firstRegistered !== null;
  return {
    name: item.name,
    last,
    neverSince: isNew && car.firstRegistered !== null ? since(car.firstRegistered, 0, false) : null,
    whyNot: whyNot(item.history, done?.date ?? null, car.keptSince, period),
  };
}

/** What was done on days not shown may be later than what is shown, and what was never done is said of a whole history only. */
function whyNot(history: ItemCare['item']['history'], done: LocalDate | null, keptSince: LocalDate | null, { from, to }: PackPeriod): string | null {
  if (to !== null) return done === null ? sayOf('status-not-done-after', { to }) : sayOf('status-done-after', { date: done, to });
  if (done !== null) return null;
  if (from !== null) return sayOf('status-not-done-before', { from });
  if (history !== 'from-purchase') return null;
  return keptSince === null ? sayOf('status-none-before') : sayOf('status-none-since', { date: keptSince });
}

/** What was planned as a wish, or as something done once, and was done: the latest record of each. */
function changesOf(care: CarCare, planned: readonly ItemCare[], period: PackPeriod): StatusInput['changes'] {
  return planned.flatMap(({ item, completions }) => {
    const done = completions.findLast((one) => isWithin(period, one.date));
    if (done === undefined) return [];
    const papers = new Set(care.records.filter((record) => record.date === done.date && record.lines.some((line) => line.item === item.id)).flatMap((record) => record.papers));
    return [{ name: item.name, on: done.date, papers: papers.size }];
  });
}
