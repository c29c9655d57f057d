import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { Closing, ClosingCar } from '../../../shared-core/views/closing-schema.ts';
import { readCosts } from '../../ui/form/cost-draft.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { carNote, isToldDone, isWithoutRecord, leftOver, lotKey, takenOf, taskDraft, type CarChanges, type ClosingChanges } from './closing-changes.ts';

type Request = RequestOf<'session.close'>;

/** Reads the form as the request it describes; papers of a car are kept first and added then. */
export function composeClosing(draft: ClosingChanges, closing: Closing, currency: string): Result<Request> {
  const read = new FieldsRead();
  return read.whole({
    session: closing.session.id,
    date: read.date('date', draft.date ?? closing.date),
    sure: draft.sure,
    cars: closing.cars.map((car, at) => carRequest(car, draft.cars[car.car] ?? {}, `cars.${at}.`, read, currency)),
    wastes: leftOver(closing, draft).flatMap(({ what, name, kept }) => ((draft.wastes[what] ?? kept) ? [{ what: name, where: textOrNull(draft.wasteWhere) }] : [])),
  });
}

function carRequest(car: ClosingCar, told: CarChanges, at: string, read: FieldsRead, currency: string): Request['cars'][number] {
  const tasks = car.tasks.map((task, index) => ({ task, index, told: taskDraft(task, told.tasks?.[task.key]) }));
  return {
    car: car.car,
    reading: read.distanceOrNull(`${at}reading`, told.reading ?? '', car.unit),
    lines: tasks.filter(({ task }) => task.task.kind === 'item').map(({ task, index, told: { outcome, minutes, note } }) => {
      if (outcome === null) read.refuse(`${at}tasks.${index}.outcome`, 'choose-outcome');
      return { item: task.task.id, outcome: outcome ?? 'not-done', minutes: outcome === 'not-done' ? null : read.wholeOrNull(`${at}tasks.${index}.minutes`, minutes), note };
    }),
    met: tasks.filter(({ task, told: { met } }) => task.task.kind === 'obligation' && met).map(({ task, index, told: { lastValidDay, paid } }) => ({
      obligation: task.task.id,
      ...(lastValidDay === '' ? {} : { lastValidDay: read.date(`${at}tasks.${index}.lastValidDay`, lastValidDay) }),
      paidMinor: read.moneyOrNull(`${at}tasks.${index}.paid`, paid, currency),
      reference: textOrNull(told.reference ?? ''),
    })),
    measured: car.values.flatMap(({ id, read: { kind } }) => (kind === 'measured' && told.values?.[id]?.keep !== false ? [{ value: id, fresh: told.values?.[id]?.fresh ?? false }] : [])),
    followUps: tasks.filter((one) => isToldDone(one.task, one.told)).flatMap(({ task, told: { followUps } }) => task.followUps.filter((_, index) => followUps[index] === true).map(({ text, days, distance }) => ({ text, days, distance, item: task.task.kind === 'item' ? task.task.id : null }))),
    costs: readCosts(told.costs ?? [], read, currency, at),
    printedTotalMinor: read.moneyOrNull(`${at}printedTotalMinor`, told.printedTotal ?? '', currency),
    doneBy: textOrNull(told.doneBy ?? ''),
    reference: textOrNull(told.reference ?? ''),
    lotsUsed: lotsOf(car, told, at, read),
    note: carNote(car, told),
    ...(car.photos > 0 && isWithoutRecord(car, told) ? { photos: told.photosAside === true ? ('set-aside' as const) : ('keep' as const) } : {}),
  };
}

/** One lot may serve several tasks: it is named once, with all that was taken. */
function lotsOf(car: ClosingCar, told: CarChanges, at: string, read: FieldsRead): { lot: string; quantity: number }[] {
  const used = new Map<string, number>();
  for (const [index, one] of takenOf(car, told).lots.entries()) {
    const quantity = read.numberOrNull(`${at}lots.${index}`, told.lots?.[lotKey(one)] ?? String(one.quantity)) ?? 0;
    if (quantity < 0) read.refuse(`${at}lots.${index}`, 'not-a-number', { example: '4' });
    if (quantity > 0) used.set(one.lot, Math.round(((used.get(one.lot) ?? 0) + quantity) * 1000) / 1000);
  }
  return [...used].map(([lot, quantity]) => ({ lot, quantity }));
}
