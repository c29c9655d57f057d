import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

type Record = CarView['records'][number]['record'];
export type Outcome = Record['lines'][number]['outcome'];
export type Work = Record['lines'][number]['work'];
export type CostKind = Record['costs'][number]['kind'];

/** A line of what was done: an item of the car, or one of its own. */
export interface LineDraft {
  readonly item: string | null;
  readonly name: string;
  readonly work: Work;
  readonly outcome: Outcome;
}

/** One amount of money. */
export interface CostDraft {
  readonly kind: CostKind;
  readonly text: string;
  readonly amount: string;
}

/** What is typed into the form of a work record. */
export interface RecordDraft {
  readonly date: string;
  readonly reading: string;
  readonly place: string;
  readonly placeName: string;
  readonly doneBy: string;
  readonly reference: string;
  readonly lines: readonly LineDraft[];
  readonly costs: readonly CostDraft[];
  readonly printedTotal: string;
  readonly files: readonly File[];
  readonly note: string;
  readonly reconstructed: boolean;
}

/** The outcomes a line of work may have. */
export function outcomesOf(work: Work): readonly Outcome[] {
  return work === 'replace' ? ['done', 'not-done'] : ['good', 'watch', 'acted', 'not-done'];
}

/** A line for an item of the car, done as one hopes. */
export function lineOfItem(item: CarView['items'][number]['item']): LineDraft {
  return { item: item.id, name: item.name, work: item.work, outcome: item.work === 'replace' ? 'done' : 'good' };
}

/** The form as it opens: today, and the item one came from. */
export function recordDraft(view: CarView, item: string | null): RecordDraft {
  const chosen = view.items.find((one) => one.item.id === item);
  return {
    date: view.today,
    reading: '',
    place: 'home',
    placeName: '',
    doneBy: '',
    reference: '',
    lines: chosen === undefined ? [] : [lineOfItem(chosen.item)],
    costs: [],
    printedTotal: '',
    files: [],
    note: '',
    reconstructed: false,
  };
}

/** Reads the form's fields as the record they describe; papers are kept first and added then. */
export function composeRecord(draft: RecordDraft, car: CarView['car'], currency: string): Result<Omit<RequestOf<'record.add'>, 'papers'>> {
  const read = new FieldsRead();
  if (draft.lines.length === 0) read.refuse('lines', 'nothing-chosen');
  return read.whole({
    car: car.id,
    date: read.date('date', draft.date),
    place: draft.place as Record['place'],
    placeName: draft.place === 'garage' ? textOrNull(draft.placeName) : null,
    doneBy: textOrNull(draft.doneBy),
    reference: textOrNull(draft.reference),
    reading: read.distanceOrNull('reading', draft.reading, car.unit),
    lines: draft.lines.map(({ item, name, work, outcome }) => ({ item, name, work, outcome })),
    costs: draft.costs.map(({ kind, text, amount }, at) => ({ kind, text, amountMinor: read.money(`costs.${at}.amountMinor`, amount, currency) })),
    printedTotalMinor: read.moneyOrNull('printedTotalMinor', draft.printedTotal, currency),
    note: draft.note,
    reconstructed: draft.reconstructed,
  });
}
