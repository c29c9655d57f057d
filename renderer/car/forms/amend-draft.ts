import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { fieldsOf, type RecordDraft } from './record-draft.ts';

/** What is typed into the form that amends a record. */
export interface AmendDraft extends RecordDraft {
  readonly title: string;
  readonly why: string;
}

/** The form as it opens: the record as it reads now. */
export function amendDraft({ record, currency }: RecordView): AmendDraft {
  return {
    date: record.date, reading: '', title: record.title, why: '',
    place: record.place, placeName: record.placeName ?? '', doneBy: record.doneBy ?? '', approvedBy: record.approvedBy ?? '', vouched: record.vouched ?? '', method: record.method ?? '', reference: record.reference ?? '',
    lines: record.lines.map(({ item, name, work, outcome, note, minutes }) => ({ item, name, work, outcome, note, recheckOn: '', minutes: minutes === null ? '' : String(minutes) })),
    lots: record.lotsUsed.map(({ lot, quantity }) => ({ lot, quantity: String(quantity) })),
    measured: [], settles: [],
    costs: record.costs.map(({ kind, text, amountMinor, item }) => ({ kind, text, amount: amountText(amountMinor, currency), ...(item === undefined ? {} : { item }) })),
    printedTotal: record.printedTotalMinor === null ? '' : amountText(record.printedTotalMinor, currency),
    files: [], note: record.note, reconstructed: record.reconstructed,
  };
}

/** Reads the form as the amendment it describes: only what differs is sent. New papers are kept first and added then. */
export function composeAmendment(draft: AmendDraft, { record, currency }: RecordView, papers: readonly string[] = []): Result<RequestOf<'record.amend'>> {
  const read = new FieldsRead();
  if (draft.why.trim() === '') read.refuse('why', 'amend-without-why');
  const lines = draft.lines.map(({ item, name, work, outcome, note, minutes }, at) => ({
    item, name, work, outcome, minutes: outcome === 'not-done' ? null : read.wholeOrNull(`lines.${at}.minutes`, minutes), note: outcome === 'done' || outcome === 'good' ? '' : note,
  }));
  const next = { title: draft.title, ...fieldsOf(draft, currency, read), lines, papers: [...record.papers, ...papers.filter((one) => !record.papers.includes(one))] };
  const changed = Object.entries(next).filter(([field, value]) => JSON.stringify(value) !== JSON.stringify(record[field as keyof typeof record]));
  if (changed.length === 0) read.refuse('why', 'amend-nothing');
  return read.whole({ id: record.id, why: draft.why, ...Object.fromEntries(changed) });
}
