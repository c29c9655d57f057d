import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { intervalSchema, isOnce, type Interval } from '../care/limit.ts';
import { obligations, obligationSchema } from '../care/obligation.ts';
import { serviceItemSchema, type ServiceItem } from '../care/service-item.ts';
import { underSevereUse } from '../care/severe-use.ts';
import { carSchema, type Car } from '../fleet/car.ts';
import { findCar, findHousehold } from '../fleet/find-car.ts';
import { instrumentSchema } from '../fleet/instrument.ts';
import { layUpSchema } from '../fleet/lay-up.ts';
import { readings, readingSchema } from '../fleet/reading.ts';
import { unitsShown } from '../fleet/unit-shown.ts';
import { useChangeSchema } from '../fleet/use-change.ts';
import { vinChecks } from '../fleet/vin.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { householdAccount } from '../ledger/household-account.ts';
import { toldCost } from '../ledger/record-account.ts';
import { costsByYear, costsOfCar } from '../ledger/years.ts';
import { ownRecords } from '../records/earlier-things.ts';
import { observationSchema } from '../records/observation.ts';
import { papers, paperSchema } from '../records/paper.ts';
import { observationsWithPapers } from '../records/tied-papers.ts';
import { workRecords, workRecordSchema } from '../records/work-record.ts';
import { writtenWhen, writtenWhenSchema } from '../records/written-when.ts';
import { ok } from '../result/result.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { followUps, followUpSchema } from '../work/follow-up.ts';
import { allowanceViews, allowanceViewSchema } from './allowance-view.ts';
import { careOf, type CarCare } from './car-care.ts';
import { carDue, carDueSchema } from './due-view.ts';
import { ownMinutes, ownMinutesSchema } from './own-minutes.ts';
import { papersOfCar } from './papers-of-car.ts';
import { leadTimes } from './notice-days.ts';
import { odometerCurve, odometerCurveSchema } from './odometer-curve.ts';
import { recallViews, recallViewSchema } from './recall-view.ts';
import { trackRecordSchema, trackRecordView } from './track-record-view.ts';
import { usageNotes, usageNoteSchema, usageView, usageViewSchema } from './usage-view.ts';
import { wearSeriesViewSchema, wearViews } from './wear-view.ts';
import { wheelViews, wheelViewSchema } from './wheel-view.ts';

/** Of a record of an earlier keeper: the currency of its amounts, null where nobody said, and the fields that were withheld. */
export const earlierSchema = z.object({ currency: z.string().nullable(), withheld: z.array(z.string()) });

export const carViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  locale: z.string(),
  car: carSchema,
  /** A remark only: outside North America position 9 is often no check digit. */
  vinChecks: z.boolean().nullable(),
  due: carDueSchema,
  /** `severe`: the interval as it is counted under severe use; null where use is ordinary or it is not counted from work done. */
  items: z.array(z.object({
    item: serviceItemSchema,
    severe: intervalSchema.nullable(),
    doneOn: z.array(dateSchema),
    /** How long it takes by one's own times at home; null where there are none. */
    learned: ownMinutesSchema.nullable(),
  })),
  readings: z.array(readingSchema),
  instruments: z.array(instrumentSchema),
  usage: usageViewSchema.nullable(),
  usageNotes: z.array(usageNoteSchema),
  layUps: z.array(layUpSchema),
  useChanges: z.array(useChangeSchema),
  trackRecord: trackRecordSchema,
  curve: odometerCurveSchema,
  /** The unit in which the odometer showed its distance, from when; null: from the beginning. */
  units: z.array(z.object({ from: dateSchema.nullable(), unit: distanceUnitSchema })),
  records: z.array(z.object({ record: workRecordSchema, enteredAt: z.string(), written: writtenWhenSchema, amended: z.boolean(), totalMinor: z.number(), earlier: earlierSchema.nullable() })),
  /** What came with the pack of an earlier keeper, by its id; the car itself where anything of it was withheld. */
  earlier: z.array(z.object({ id: z.string(), withheld: z.array(z.string()) })),
  observations: z.array(observationSchema),
  /** Follow-ups that are ticked, the last one first; the open ones stand in `due`. */
  followUpsDone: z.array(followUpSchema),
  /** What was measured, each thing with its points, its line, its limits and what they come to. */
  measured: z.array(wearSeriesViewSchema),
  wheels: z.array(wheelViewSchema),
  /** The obligations as they were entered, soonest first. */
  obligations: z.array(obligationSchema),
  /** Every recall, those done among them. */
  recalls: z.array(recallViewSchema),
  /** Every distance allowance, those ended among them. */
  allowances: z.array(allowanceViewSchema),
  papers: z.array(paperSchema),
  costs: z.array(z.object({ year: z.number(), totalMinor: z.number(), byKind: z.record(z.string(), z.number()) })),
});
export type CarView = z.infer<typeof carViewSchema>;

/** Everything about one car, by its id or its name. */
export const showCar = ask({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: carViewSchema,
  answer: (facts, request, moment) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const care = careOf(facts, car.value, moment.today, leadTimes(facts));
    const { currency, locale } = household.value;
    return ok({ today: moment.today, currency, locale, ...wholeCar(facts, care, moment.today) });
  },
});

function wholeCar(facts: Facts, care: CarCare, today: LocalDate): Omit<CarView, 'today' | 'currency' | 'locale'> {
  const { car, use } = care;
  return {
    car,
    vinChecks: car.vin === null ? null : vinChecks(car.vin),
    due: carDue(facts, care, today),
    items: care.items.map((one) => ({ item: one.item, severe: severeInterval(one.item, car), doneOn: one.completions.map((done) => done.date), learned: learnedOf(one.item, care) })),
    readings: latestFirst(facts.ofCar(readings, car.id)),
    instruments: [...use.instruments],
    usage: usageView(use, car.unit, today),
    usageNotes: usageNotes(use, car.unit, today),
    layUps: [...use.told.layUps].sort((a, b) => (a.from < b.from ? 1 : -1)),
    useChanges: latestFirst(use.told.changes),
    trackRecord: trackRecordView(use, car.unit),
    curve: odometerCurve(car, use, today),
    units: [...unitsShown(facts, car)],
    records: recordsOf(facts, care),
    earlier: [...care.earlier].filter(([id, one]) => id !== car.id || one.withheld.length > 0).map(([id, one]) => ({ id, withheld: [...one.withheld] })),
    observations: latestFirst(observationsWithPapers(facts, car.id)),
    followUpsDone: facts.ofCar(followUps, car.id).filter((one) => one.doneOn !== null).sort((a, b) => (a.doneOn === b.doneOn ? (a.id < b.id ? 1 : -1) : (a.doneOn ?? '') < (b.doneOn ?? '') ? 1 : -1)),
    measured: wearViews(facts, care.wear, car.unit),
    wheels: wheelViews(facts, car.id, today),
    obligations: [...facts.ofCar(obligations, car.id)].sort((a, b) => (a.lastValidDay < b.lastValidDay ? -1 : 1)),
    recalls: recallViews(facts, car.id, today),
    allowances: allowanceViews(facts, car, care.use, today),
    papers: papersOfCar(facts, car.id).flatMap((id) => facts.get(papers, id) ?? []),
    costs: costsByYear(costsOfCar(householdAccount(facts, today), car.id).filter((cost) => cost.kind !== 'fuel')).map((cost) => ({ ...cost, byKind: { ...cost.byKind } })),
  };
}

/** Only what was learned from times of one's own: what was entered stands with the item. */
function learnedOf(item: ServiceItem, { records, earlier }: CarCare): CarView['items'][number]['learned'] {
  const learned = ownMinutes(item, ownRecords(records, earlier));
  return learned === null || learned.own === 0 ? null : learned;
}

/** What is counted from a date of its own is counted in whole steps, however hard the use. */
function severeInterval({ anchor, interval }: ServiceItem, { severeUse }: Car): Interval | null {
  const { first, repeat } = interval;
  return severeUse === 1 || anchor.kind !== 'completion' || isOnce(interval) ? null : { first: underSevereUse(first, severeUse), repeat: underSevereUse(repeat, severeUse) };
}

function recordsOf(facts: Facts, care: CarCare): CarView['records'] {
  const stamps = facts.stamps(workRecords, care.car.id);
  return latestFirst(care.records).map((record) => {
    const stamp = stamps.get(record.id);
    const earlier = care.earlier.get(record.id) ?? null;
    const enteredAt = earlier?.entered ?? stamp?.firstAt ?? '';
    return {
      record, enteredAt, written: writtenWhen(record, enteredAt), amended: stamp !== undefined && stamp.seq !== stamp.firstSeq, totalMinor: toldCost(record),
      earlier: earlier === null ? null : { currency: earlier.currency, withheld: [...earlier.withheld] },
    };
  });
}

function latestFirst<One extends { readonly date: LocalDate; readonly id: string }>(list: readonly One[]): One[] {
  return [...list].sort((a, b) => (a.date === b.date ? (a.id < b.id ? 1 : -1) : a.date < b.date ? 1 : -1));
}
