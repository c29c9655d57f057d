import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { withPapers } from './keep-papers.ts';

type Unit = CarView['car']['unit'];
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
}

/** The form as it opens. */
export function readingDraft(today: string): ReadingDraft {
  return { value: '', unit: '', date: today, source: 'keeper', note: '', files: [], replaced: false, lastShown: '', lastUnit: '', sure: false };
}

/**
 * The unit that a car's odometer showed on a date; a date that is none yet counts as the latest.
 *
 * @example unitOn([{ from: null, unit: 'mi' }, { from: '2024-05-01', unit: 'km' }], '2024-04-30') //=> 'mi'
 */
export function unitOn(units: CarView['units'], date: string): Unit {
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(date);
  return units.findLast(({ from }) => from === null || !isDate || from <= date)?.unit ?? 'km';
}

/** The unit a reading is in: as chosen, or the one shown on its day. */
export function unitOfDraft({ unit, date }: ReadingDraft, { units }: Pick<CarView, 'units'>): Unit {
  return unit === '' ? unitOn(units, date) : (unit as Unit);
}

/** The unit of what the old instrument last showed: as chosen, or the one shown on the days before. */
export function unitOfLast({ lastUnit, date }: ReadingDraft, { units }: Pick<CarView, 'units'>): Unit {
  const before = units.filter(({ from }) => from === null || from < date);
  return lastUnit === '' ? unitOn(before, date) : (lastUnit as Unit);
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
    replaced: draft.replaced ? { lastShown: read.distanceOrNull('replaced.lastShown', draft.lastShown, unitOfLast(draft, view)) } : null,
  });
  if (!whole.ok) return whole;
  return withPapers(draft.files, ([paper = null]) => change('reading.record', { ...whole.value, paper }));
}
