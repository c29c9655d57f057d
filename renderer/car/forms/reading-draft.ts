import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { unitOfDraft, unitOfLast } from './reading-units.ts';

export type RecordedReading = Changed<'reading.record'>;

/** What is typed into the form of a reading. */
export interface ReadingDraft {
  readonly value: string;
  /** Empty: the unit that the instrument then in the car shows. */
  readonly unit: string;
  readonly date: string;
  readonly source: string;
  readonly note: string;
  readonly files: readonly File[];
  readonly replaced: boolean;
  readonly lastShown: string;
  readonly lastUnit: string;
  readonly sure: boolean;
  readonly laterOfNew: boolean;
}

/** Records the reading with its paper. */
export async function sendReading(draft: ReadingDraft, view: Pick<CarView, 'car' | 'units'>): Promise<Result<RecordedReading>> {
  const read = new FieldsRead();
  const whole = read.whole({
    car: view.car.id,
    value: read.number('value', draft.value),
    unit: unitOfDraft(draft, view),
    date: read.date('date', draft.date),
    source: draft.source as 'keeper',
    note: draft.note,
    sure: draft.replaced && draft.sure,
    replaced: draft.replaced ? { lastShown: read.distanceOrNull('replaced.lastShown', draft.lastShown, unitOfLast(draft, view)), laterOfNew: draft.laterOfNew } : null,
  });
  if (!whole.ok) return whole;
  return withPapers(draft.files, ([paper = null]) => change('reading.record', { ...whole.value, paper }));
}
