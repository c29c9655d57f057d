import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { Closing, ClosingCar } from '../../../shared-core/views/closing-schema.ts';
import { readCosts, type CostDraft } from '../../ui/form/cost-draft.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

type Request = RequestOf<'session.close'>;
type Outcome = NonNullable<ClosingCar['tasks'][number]['outcome']>;

/** A task as it is told; an obligation was met or not. */
export interface TaskDraft {
  readonly outcome: Outcome;
  readonly met: boolean;
  readonly lastValidDay: string;
  readonly paid: string;
  readonly minutes: string;
  readonly note: string;
  /** Of its follow-ups, whether each is wanted. */
  readonly followUps: readonly boolean[];
}

/** What is told of one car. */
export interface CarDraft {
  readonly reading: string;
  readonly tasks: readonly TaskDraft[];
  /** Of what is taken off the shelf, how much. */
  readonly lots: readonly string[];
  /** Of what was measured, whether it is kept, and whether it is of the new part. */
  readonly values: readonly { readonly keep: boolean; readonly fresh: boolean }[];
  readonly costs: readonly CostDraft[];
  readonly printedTotal: string;
  readonly doneBy: string;
  readonly reference: string;
  readonly files: readonly File[];
  readonly note: string;
}

/** What is typed while a session is closed. */
export interface ClosingDraft {
  readonly date: string;
  readonly cars: readonly CarDraft[];
  readonly wastes: readonly boolean[];
  readonly wasteWhere: string;
}

/** The form as it opens: all that was ticked, read, timed and used. */
export function closingDraft({ date, cars, wastes }: Closing): ClosingDraft {
  return { date, cars: cars.map(carDraft), wastes: wastes.map((one) => one.kept), wasteWhere: '' };
}

function carDraft(car: ClosingCar): CarDraft {
  return {
    reading: '',
    tasks: car.tasks.map(({ outcome, minutes, note, followUps, ticked }) => ({ outcome: outcome ?? 'done', met: outcome === null && ticked > 0, lastValidDay: '', paid: '', minutes: minutes === null ? '' : String(minutes), note, followUps: followUps.map(() => true) })),
    lots: car.lots.map((one) => String(one.quantity)),
    values: car.values.map(() => ({ keep: true, fresh: false })),
    costs: [], printedTotal: '', doneBy: '', reference: '', files: [], note: '',
  };
}

/** Reads the form as the request it describes; papers of a car are kept first and added then. */
export function composeClosing(draft: ClosingDraft, closing: Closing, currency: string): Result<Request> {
  const read = new FieldsRead();
  return read.whole({
    session: closing.session.id,
    date: read.date('date', draft.date),
    cars: closing.cars.flatMap((car, at) => {
      const told = draft.cars[at];
      return told === undefined ? [] : [carRequest(car, told, `cars.${at}.`, read, currency)];
    }),
    wastes: closing.wastes.flatMap(({ name }, at) => (draft.wastes[at] === true ? [{ what: name, where: textOrNull(draft.wasteWhere) }] : [])),
  });
}

function carRequest(car: ClosingCar, told: CarDraft, at: string, read: FieldsRead, currency: string): Request['cars'][number] {
  const tasks = car.tasks.map((task, index) => ({ task, index, told: told.tasks[index] })).flatMap((one) => (one.told === undefined ? [] : [{ ...one, told: one.told }]));
  const items = tasks.filter(({ task }) => task.outcome !== null);
  return {
    car: car.car,
    reading: read.distanceOrNull(`${at}reading`, told.reading, car.unit),
    lines: items.map(({ task, index, told: { outcome, minutes, note } }) => ({ item: task.task.id, outcome, minutes: outcome === 'not-done' ? null : read.wholeOrNull(`${at}tasks.${index}.minutes`, minutes), note })),
    met: tasks.filter(({ task, told: { met } }) => task.outcome === null && met).map(({ task, index, told: { lastValidDay, paid } }) => ({
      obligation: task.task.id,
      ...(lastValidDay === '' ? {} : { lastValidDay: read.date(`${at}tasks.${index}.lastValidDay`, lastValidDay) }),
      paidMinor: read.moneyOrNull(`${at}tasks.${index}.paid`, paid, currency),
      reference: textOrNull(told.reference),
    })),
    measured: car.values.flatMap((value, index) => (value.read.kind === 'measured' && told.values[index]?.keep === true ? [{ value: value.id, fresh: told.values[index].fresh }] : [])),
    followUps: tasks.flatMap(({ task, told: { outcome, met, followUps } }) => ((task.outcome === null ? met : outcome !== 'not-done') ? task.followUps.filter((_, index) => followUps[index] === true).map(({ text, days, distance }) => ({ text, days, distance, item: task.task.kind === 'item' ? task.task.id : null })) : [])),
    costs: readCosts(told.costs, read, currency, at),
    printedTotalMinor: read.moneyOrNull(`${at}printedTotalMinor`, told.printedTotal, currency),
    doneBy: textOrNull(told.doneBy),
    reference: textOrNull(told.reference),
    lotsUsed: lotsOf(car, told, at, read),
    note: told.note,
  };
}

/** One lot may serve several tasks: it is named once, with all that was taken. */
function lotsOf(car: ClosingCar, told: CarDraft, at: string, read: FieldsRead): { lot: string; quantity: number }[] {
  const used = new Map<string, number>();
  for (const [index, { lot }] of car.lots.entries()) {
    const quantity = read.numberOrNull(`${at}lots.${index}`, told.lots[index] ?? '') ?? 0;
    if (quantity < 0) read.refuse(`${at}lots.${index}`, 'not-a-number', { example: '4' });
    if (quantity > 0) used.set(lot, Math.round(((used.get(lot) ?? 0) + quantity) * 1000) / 1000);
  }
  return [...used].map(([lot, quantity]) => ({ lot, quantity }));
}
