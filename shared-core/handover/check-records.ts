import { canonicalJson } from '../journal/canonical-json.ts';
import { fileFault, rowFault, type Fault, type FoundFile } from './check-fault.ts';
import { historyRecord, type HistoryPart, type HistoryRecord } from './history-part.ts';
import { shownValues, type PackEntry, type RowsPart } from './journal-part.ts';
import { HISTORY } from './pack-files.ts';

/** Checks that the records a reader is shown say exactly what the proven rows say, one record for each row. */
export function checkRecords({ records }: HistoryPart, { entries }: RowsPart): Fault[] {
  const rows = new Map(entries.map((entry) => [entry.row.seq, entry]));
  const told = new Set(records.map((record) => record.row));
  return [
    ...entries.filter((entry) => !told.has(entry.row.seq)).map((entry) => rowFault('missing', HISTORY, entry.row.seq, 'fault-record-missing')),
    ...records.flatMap((record, at) => recordFaults(record, rows.get(record.row) ?? null, records[at - 1] ?? null)),
  ];
}

function recordFaults(record: HistoryRecord, entry: PackEntry | null, before: HistoryRecord | null): Fault[] {
  if (entry === null) return [rowFault('added', HISTORY, record.row, 'fault-record-added')];
  if (before !== null && record.row <= before.row) return [rowFault('reordered', HISTORY, record.row, 'fault-row-order', { before: before.row })];
  if (record.entered !== entry.row.at) return [rowFault('wrong-date', HISTORY, record.row, 'fault-record-date', { shown: record.entered, entered: entry.row.at })];
  const fields = changedFields(record, entry);
  const [told, proven] = [record, historyRecord(entry)].map((one) => canonicalJson({ ...one, values: {} }));
  const rest = told === proven ? [] : [rowFault('changed', HISTORY, record.row, 'fault-record-changed')];
  return [...fields.map((field) => rowFault('changed', HISTORY, record.row, 'fault-record-field', { field })), ...rest];
}

function changedFields(record: HistoryRecord, entry: PackEntry): string[] {
  const proven = shownValues(entry);
  const names = new Set([...Object.keys(record.values), ...Object.keys(proven)]);
  const text = (values: Readonly<Record<string, unknown>>, name: string) => (Object.hasOwn(values, name) ? canonicalJson(values[name]) : null);
  return [...names].filter((name) => text(record.values, name) !== text(proven, name));
}

/** Checks that every paper the history names is in the pack with that digest. */
export function checkPapers({ papers }: HistoryPart, files: ReadonlyMap<string, FoundFile>): Fault[] {
  return papers.flatMap(({ path, sha256 }) => {
    const file = files.get(path);
    if (file === undefined) return [fileFault('missing', path, 'fault-file-missing')];
    return file.sha256 === sha256 ? [] : [fileFault('changed', path, 'fault-paper-changed')];
  });
}

const DIGEST = /^[0-9a-f]{64}$/;

/** Papers that no row names, by a shown digest or by a field that is said to be withheld for it: nothing proves when they were kept. */
export function unprovenPapers({ papers }: HistoryPart, { entries }: RowsPart): string[] {
  const withholding = new Set(entries.filter((entry) => entry.withheld.length > 0).map((entry) => entry.row.seq));
  const digests = new Set(entries.flatMap((entry) => digestsIn(shownValues(entry))));
  return papers.filter((paper) => !digests.has(paper.redactedFrom ?? paper.sha256) && paper.namedIn?.every((row) => withholding.has(row)) !== true).map((paper) => paper.path);
}

function digestsIn(value: unknown): string[] {
  if (typeof value === 'string') return DIGEST.test(value) ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(digestsIn) : [];
}
