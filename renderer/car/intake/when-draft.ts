import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import type { IntakeItem } from './answers.ts';

/** What is typed of work that was done before. */
export interface WhenDraft {
  readonly date: string;
  readonly reading: string;
  readonly placeName: string;
  /** A paper that is kept already; empty: the files are to be kept. */
  readonly paper: string;
  readonly files: readonly File[];
}

/** The form as it opens: what was answered before, or nothing but the paper entered last. */
export function whenDraft(view: CarView, item: IntakeItem, answer: 'proven' | 'said'): WhenDraft {
  const record = view.records.find((one) => one.record.id === item.record)?.record;
  const known = item.answered === 'proven' || item.answered === 'said';
  const paper = answer === 'proven' ? (record?.papers[0] ?? view.papers[0]?.id ?? '') : '';
  return { date: known ? (item.doneOn ?? '') : '', reading: '', placeName: known ? (record?.placeName ?? '') : '', paper, files: [] };
}

/** Answers that the item was done, with its paper where that proves it; the undo of both is one. */
export async function sendWhen(draft: WhenDraft, { car }: CarView, item: IntakeItem, answer: 'proven' | 'said'): Promise<Result<Changed<'intake.answer'>>> {
  const read = new FieldsRead();
  const whole = read.whole({
    car: car.id,
    item: item.item,
    answer,
    date: read.date('date', draft.date),
    reading: item.readingGiven ? null : read.distanceOrNull('reading', draft.reading, car.unit),
    placeName: textOrNull(draft.placeName),
  });
  if (!whole.ok) return whole;
  const kept = answer === 'proven' && draft.paper !== '' ? [draft.paper] : [];
  return withPapers(answer === 'proven' && draft.paper === '' ? draft.files : [], (papers) => change('intake.answer', { ...whole.value, papers: [...kept, ...papers] }));
}
