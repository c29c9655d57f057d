import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { measurements } from '../care/measurement.ts';
import { obligations } from '../care/obligation.ts';
import { recalls } from '../care/recall.ts';
import { renewals } from '../care/renewal.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { cars } from '../fleet/car.ts';
import { readings } from '../fleet/reading.ts';
import type { Facts } from '../journal/facts.ts';
import { deliveries } from '../parts/delivery.ts';
import { orderReturns } from '../parts/order-return.ts';
import { wastes } from '../parts/waste.ts';
import { observations } from '../records/observation.ts';
import { paperTies } from '../records/paper-tie.ts';
import { workRecords } from '../records/work-record.ts';
import { say, sayNumber } from '../result/words/say.ts';
import { bookings } from '../work/booking.ts';
import { stepPhotos } from '../work/doing.ts';

/** One thing that a paper belongs to. */
export const paperUseSchema = z.object({
  kind: z.enum(['record', 'observation', 'obligation', 'car', 'renewal', 'reading', 'measurement', 'figure', 'recall', 'delivery', 'return', 'waste', 'booking', 'session']),
  id: z.string(),
  /** The car's id; null for what belongs to the household. */
  car: z.string().nullable(),
  /** What it is, for a person. */
  title: z.string(),
  date: dateSchema.nullable(),
  /** The tie that can be undone; null where it was entered with the paper. */
  tie: z.string().nullable(),
});
export type PaperUse = z.infer<typeof paperUseSchema>;

/** Everything each paper belongs to, by the paper's id; one that is not in it belongs to nothing. */
export function paperUses(facts: Facts): ReadonlyMap<string, readonly PaperUse[]> {
  const all = [...facts.all(cars).flatMap((car) => usesOfCar(facts, car.id)), ...usesOfHousehold(facts)];
  const byPaper = new Map<string, PaperUse[]>();
  for (const { paper, use } of all) byPaper.set(paper, [...(byPaper.get(paper) ?? []), use]);
  return byPaper;
}

interface Used {
  readonly paper: string;
  readonly use: PaperUse;
}

function used(paperIds: readonly (string | null | undefined)[], kind: PaperUse['kind'], id: string, of: { readonly car: string | null; readonly title: string; readonly date: LocalDate | null }): Used[] {
  return paperIds.flatMap((paper) => (paper == null ? [] : [{ paper, use: { kind, id, ...of, tie: null } }]));
}

function usesOfCar(facts: Facts, car: string): Used[] {
  return [
    ...facts.ofCar(workRecords, car).flatMap((one) => used(one.papers, 'record', one.id, { car, title: one.title, date: one.date })),
    ...facts.ofCar(observations, car).flatMap((one) => used(one.papers, 'observation', one.id, { car, title: one.text, date: one.date })),
    ...facts.ofCar(renewals, car).flatMap((one) => used(one.papers, 'renewal', one.id, { car, title: obligationTitle(facts, one.obligation), date: one.on })),
    ...facts.ofCar(readings, car).flatMap((one) => used([one.paper], 'reading', one.id, { car, title: `${sayNumber(one.typed.value)} ${one.typed.unit}`, date: one.date })),
    ...facts.ofCar(measurements, car).flatMap((one) => used([one.paper], 'measurement', one.id, { car, title: '', date: one.date })),
    ...facts.ofCar(cardFigures, car).flatMap((one) => used([one.paper], 'figure', one.id, { car, title: '', date: null })),
    ...facts.ofCar(recalls, car).flatMap((one) => used(one.papers, 'recall', one.id, { car, title: one.number, date: null })),
    ...facts.ofCar(paperTies, car).map((tie) => ({ paper: tie.paper, use: { kind: tie.kind, id: tie.to, car, ...tiedTitle(facts, tie.kind, tie.to), tie: tie.id } })),
  ];
}

function usesOfHousehold(facts: Facts): Used[] {
  return [
    ...facts.all(deliveries).flatMap((one) => used(one.papers, 'delivery', one.id, { car: null, title: '', date: one.on })),
    ...facts.all(orderReturns).flatMap((one) => used(one.papers, 'return', one.id, { car: null, title: '', date: one.on })),
    ...facts.all(wastes).flatMap((one) => used([one.disposed?.paper], 'waste', one.id, { car: null, title: one.what, date: one.disposed?.on ?? null })),
    ...facts.all(bookings).flatMap((one) => used([...(one.earlier ?? []), one].flatMap((round) => [...round.quotes.map((quote) => quote.paper), round.cameBack?.paper]), 'booking', one.id, { car: null, title: '', date: one.booked?.day ?? null })),
    ...facts.all(stepPhotos).flatMap((one) => used([one.paper], 'session', one.session, { car: one.car, title: '', date: null })),
  ];
}

function tiedTitle(facts: Facts, kind: PaperUse['kind'], to: string): { title: string; date: LocalDate | null } {
  if (kind === 'record') return { title: facts.get(workRecords, to)?.title ?? '', date: facts.get(workRecords, to)?.date ?? null };
  if (kind === 'observation') return { title: facts.get(observations, to)?.text ?? '', date: facts.get(observations, to)?.date ?? null };
  return { title: kind === 'obligation' ? obligationTitle(facts, to) : (facts.get(cars, to)?.name ?? ''), date: null };
}

/** An obligation by its own name, or by what kind it is. */
export function obligationTitle(facts: Facts, id: string): string {
  const one = facts.get(obligations, id);
  return one === null ? '' : (one.name ?? say({ key: `obligation-${one.kind}`, values: {} }));
}
