import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { MeasureKind } from '../wear/subject-words.ts';
import { readCosts, type CostDraft } from '../../ui/form/cost-draft.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

type Record = CarView['records'][number]['record'];
export type Outcome = Record['lines'][number]['outcome'];
export type Work = Record['lines'][number]['work'];

/** A line of what was done: an item of the car, or one of its own. */
export interface LineDraft {
  readonly item: string | null;
  readonly name: string;
  readonly work: Work;
  readonly outcome: Outcome;
  /** What was found. */
  readonly note: string;
  /** When what is to be watched is looked at again; empty: in three months. */
  readonly recheckOn: string;
  readonly minutes: string;
}

/** What was taken of a lot on the shelf. */
export interface LotDraft {
  readonly lot: string;
  readonly quantity: string;
}

/** One measurement. */
export interface MeasuredDraft {
  readonly what: MeasureKind;
  readonly name: string;
  readonly place: string;
  readonly value: string;
  readonly unit: string;
  readonly fresh: boolean;
}

/** What is typed into the form of a work record. */
export interface RecordDraft {
  readonly date: string;
  readonly reading: string;
  readonly place: string;
  readonly placeName: string;
  readonly doneBy: string;
  readonly approvedBy: string;
  readonly vouched: string;
  readonly method: string;
  readonly reference: string;
  readonly lines: readonly LineDraft[];
  readonly lots: readonly LotDraft[];
  readonly measured: readonly MeasuredDraft[];
  /** What was seen before and is put right. */
  readonly settles: readonly string[];
  readonly costs: readonly CostDraft[];
  readonly printedTotal: string;
  readonly files: readonly File[];
  readonly note: string;
  readonly reconstructed: boolean;
}

/** A line done as one hopes: replaced, or looked at and found good. */
export function lineDone({ item, name, work }: Pick<LineDraft, 'item' | 'name' | 'work'>): LineDraft {
  return { item, name, work, outcome: work === 'replace' ? 'done' : 'good', note: '', recheckOn: '', minutes: '' };
}

/** A line for an item of the car. */
export function lineOfItem({ id, name, work }: CarView['items'][number]['item']): LineDraft {
  return lineDone({ item: id, name, work });
}

/** The form as it opens: today, and the item or the lines one came from. */
export function recordDraft(view: CarView, item: string | null, lines: readonly LineDraft[] = []): RecordDraft {
  const chosen = view.items.find((one) => one.item.id === item);
  return {
    date: view.today,
    reading: '',
    place: 'home',
    placeName: '',
    doneBy: '',
    approvedBy: '',
    vouched: '',
    method: '',
    reference: '',
    lines: chosen === undefined ? lines : [lineOfItem(chosen.item)],
    lots: [],
    measured: [],
    settles: [],
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
  return read.whole({
    car: car.id,
    ...fieldsOf(draft, currency, read),
    reading: read.distanceOrNull('reading', draft.reading, car.unit),
    lines: draft.lines.map((line, at) => requestLine(line, at, read)),
    settles: [...draft.settles],
    measured: draft.measured.map((one, at) => ({ what: one.what, name: one.what === 'other' ? textOrNull(one.name) : null, place: (one.place === '' ? null : one.place) as 'front', unit: one.unit as 'mm', fresh: one.fresh, value: read.number(`measured.${at}.value`, one.value, '5.5') })),
  });
}

/** Reads the fields that a record and its amendment share. */
export function fieldsOf(draft: RecordDraft, currency: string, read: FieldsRead) {
  if (draft.lines.length === 0) read.refuse('lines', 'nothing-chosen');
  return {
    date: read.date('date', draft.date),
    place: draft.place as Record['place'],
    placeName: draft.place === 'garage' ? textOrNull(draft.placeName) : null,
    doneBy: textOrNull(draft.doneBy),
    approvedBy: textOrNull(draft.approvedBy),
    ...(draft.vouched === '' ? {} : { vouched: draft.vouched as 'stamp' }),
    method: textOrNull(draft.method),
    reference: textOrNull(draft.reference),
    lotsUsed: draft.lots.map((one, at) => ({ lot: one.lot, quantity: read.number(`lotsUsed.${at}.quantity`, one.quantity, '4') })),
    costs: readCosts(draft.costs, read, currency, '', draft.lines.flatMap((line) => line.item ?? [])),
    printedTotalMinor: read.moneyOrNull('printedTotalMinor', draft.printedTotal, currency),
    note: draft.note,
    reconstructed: draft.reconstructed,
  };
}

/** The day to look again belongs to what is to be watched alone. */
function requestLine({ item, name, work, outcome, note, recheckOn, minutes }: LineDraft, at: number, read: FieldsRead): RequestOf<'record.add'>['lines'][number] {
  const again = outcome === 'watch' ? read.dateOrNull(`lines.${at}.recheckOn`, recheckOn) : null;
  return { item, name, work, outcome, minutes: outcome === 'not-done' ? null : read.wholeOrNull(`lines.${at}.minutes`, minutes), note: outcome === 'done' || outcome === 'good' ? '' : note, ...(again === null ? {} : { recheckOn: again }) };
}
