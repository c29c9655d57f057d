import { readings, type Reading } from '../fleet/reading.ts';
import type { HandedPaper } from '../handover/handed-paper.ts';
import type { HistoryInput, HistoryWork } from '../handover/history-input.ts';
import { isWithin, type PackPeriod } from '../handover/pack-period.ts';
import { withheldOf, withoutWithheld } from '../handover/withheld-fields.ts';
import type { Facts } from '../journal/facts.ts';
import { paperName } from '../records/paper-note.ts';
import { papers, type Paper } from '../records/paper.ts';
import { recordScore } from '../records/record-score.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';
import { writtenWhen } from '../records/written-when.ts';
import { must } from '../result/assert.ts';
import { sayOf } from '../result/words/say.ts';
import type { CarCare } from './car-care.ts';
import type { HistoryChoice } from './history-choice.ts';

/** A car's records as the history tells them, the latest first; those of an earlier keeper with that keeper's own moments and currency. */
export function worksOf(facts: Facts, care: CarCare, choice: HistoryChoice): readonly HistoryWork[] {
  const stamps = facts.stamps(workRecords, care.car.id);
  const ofCar = new Map(facts.ofCar(readings, care.car.id).map((reading) => [reading.id, reading]));
  return care.records.filter((record) => isWithin(choice.period, record.date)).sort(latestFirst).map((record): HistoryWork => {
    const earlier = care.earlier.get(record.id) ?? null;
    const enteredAt = earlier?.entered ?? must(stamps.get(record.id), 'stamp of a record').firstAt;
    return {
      record: withoutWithheld(record, choice.withheld),
      enteredAt,
      written: writtenWhen(record, enteredAt),
      amendments: (choice.amendments.get(record.id) ?? []).map((one, at) => ({ at: earlier?.amended[at] ?? one.at, why: choice.withheld.has('why') ? sayOf('history-why-withheld') : one.why })),
      odometer: odometerOf(record, ofCar.get(record.reading ?? '') ?? null, choice.period),
      score: recordScore(record, earlier?.withheld ?? []),
      earlier: earlier === null ? null : { proven: isProven(earlier.pack, choice.previous) },
      currency: earlier === null ? choice.currency : earlier.currency,
      withheld: withheldOf(record, choice.withheld),
      withheldBefore: earlier?.withheld ?? [],
      papers: record.papers.map((id) => handedPaper(facts, id, choice)),
    };
  });
}

function latestFirst(a: WorkRecord, b: WorkRecord): number {
  return a.date < b.date ? 1 : a.date > b.date ? -1 : a.id < b.id ? 1 : -1;
}

function isProven(pack: string, previous: HistoryInput['previous']): boolean {
  return previous.some((one) => one.sha256 === pack && (one.path !== null || one.within !== null));
}

/** What the odometer showed: the reading stays on its own day, where the record was amended to another. */
function odometerOf(record: WorkRecord, reading: Reading | null, period: PackPeriod): string | null {
  if (reading === null) return null;
  if (!isWithin(period, reading.date)) return sayOf('history-read-hidden');
  const key = reading.standing === 'accepted' ? 'history-read' : 'history-read-doubtful';
  const read = { value: reading.typed.value, unit: reading.typed.unit };
  return reading.date === record.date ? sayOf(key, read) : sayOf(`${key}-on`, { ...read, date: reading.date });
}

const WITHHELD_PAPER: Readonly<Record<Paper['media'], string>> = {
  'application/pdf': 'history-paper-pdf', 'image/jpeg': 'history-paper-picture', 'image/png': 'history-paper-picture', 'image/webp': 'history-paper-picture', 'application/octet-stream': 'history-paper-file',
};

/** A paper that is not in the pack has no name in it: a name may tell as much as the paper does. */
export function handedPaper(facts: Facts, id: string, choice: HistoryChoice): HandedPaper {
  const [paper, path] = [must(facts.get(papers, id), 'paper of the car'), choice.paperPaths.get(id) ?? null];
  return choice.marked.get(id) ?? { name: path === null ? sayOf(WITHHELD_PAPER[paper.media]) : paperName(facts, paper), path, sha256: id, blackedOut: [] };
}
