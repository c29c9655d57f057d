import type { RecordLine, WorkRecord } from '../../../shared-core/records/work-record.ts';
import { day } from '../calendar/day.ts';

/** A line on the item "oil": replaced and done unless said otherwise. */
export function lineOn(more: Partial<RecordLine> = {}): RecordLine {
  return { item: 'oil', name: 'Engine oil and filter', work: 'replace', outcome: 'done', minutes: null, note: '', ...more };
}

/** A record of Pip on a date, at home, of one line. */
export function recordOn(date: string, more: Partial<WorkRecord> = {}): WorkRecord {
  return {
    id: `w-${date}`, car: 'pip', date: day(date), title: 'Oil', place: 'home', placeName: null, doneBy: null, approvedBy: null, reference: null, method: null, reading: null,
    lines: [lineOn()], costs: [], printedTotalMinor: null, lotsUsed: [], papers: [], note: '', reconstructed: false, ...more,
  };
}
