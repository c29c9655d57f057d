import { sayDate, sayNumber } from '../result/words/say.ts';
import { heading, paragraph, table, type Block, type DocumentValue } from './document-value.ts';
import { historyDutyBlocks, openRecalls } from './history-duties.ts';
import { historyRecordBlocks } from './history-records.ts';
import type { HistoryInput } from './history-input.ts';

const DASH = '–';

/**
 * The history of a car as a document for people: what it is, a summary on one page, every reading, every item with its
 * gaps, what is open or late, every record, and how to check it all. It states what is missing as plainly as what is there.
 */
export function historyDocument(input: HistoryInput): DocumentValue {
  const { car } = input;
  const title = `Service history of ${car.name}`;
  return {
    title,
    language: 'en-GB',
    subject: `What was done to ${car.name}, when it was written down, and what is missing`,
    foot: `${title}, ${sayDate(input.today)}${input.sample ? ', sample: proves nothing' : ''}`,
    blocks: [
      heading(1, title),
      ...(input.sample ? [{ kind: 'notice', text: 'This is the history of an invented car from the sample household. It proves nothing.' } as const] : []),
      ...carBlocks(input),
      ...summaryBlocks(input),
      ...openBlocks(input),
      ...itemBlocks(input),
      ...readingBlocks(input),
      ...historyRecordBlocks(input),
      ...paperBlocks(input),
      ...checkBlocks(input),
    ],
  };
}

function carBlocks({ car, today, odometer }: HistoryInput): Block[] {
  const rows: [string, string][] = [
    ['Car', [car.description, car.year === null ? null : String(car.year)].filter((part) => part !== null).join(', ') || car.name],
    ['First registered', car.firstRegistered === null ? 'not entered' : sayDate(car.firstRegistered)],
    ['Kept by the present keeper since', car.keptSince === null ? 'not entered' : sayDate(car.keptSince)],
    ['Vehicle identification number', car.vin ?? 'not entered'],
    ['Registration', car.registration ?? 'not entered'],
    [`Odometer on ${sayDate(today)}`, odometer ?? 'no reading'],
  ];
  return [{ kind: 'facts', rows }];
}

function summaryBlocks(input: HistoryInput): Block[] {
  const { records, readings, items } = input;
  const dates = records.map((one) => one.record.date).sort();
  const written = (when: string) => records.filter((one) => one.written === when).length;
  const rows: [string, string][] = [
    ['Work records', records.length === 0 ? 'none' : `${records.length}, from ${sayDate(dates[0] ?? '')} to ${sayDate(dates.at(-1) ?? '')}`],
    ['Written down', `${written('same-day')} on the day, ${written('within-a-week')} within a week, ${written('later')} later, ${written('reconstructed')} from memory`],
    ['With a paper', `${records.filter((one) => one.papers.length > 0).length} of ${records.length}`],
    ['Readings', `${readings.filter((one) => one.standing === 'accepted').length} accepted, ${readings.filter((one) => one.standing !== 'accepted').length} doubtful or dismissed`],
    ['Service items', `${items.length}, of which ${items.filter((one) => one.late).length} late and ${items.filter((one) => one.gaps.length > 0).length} with something missing in their history`],
  ];
  return [heading(2, 'Summary'), { kind: 'facts', rows }];
}

function openBlocks({ items, obligations, recalls, observations }: HistoryInput): Block[] {
  const lines = [
    ...items.filter((one) => one.late).map((one) => `${one.name}: ${one.due}`),
    ...obligations.filter((one) => one.late).map((one) => `${one.name}: ran out on ${sayDate(one.lastValidDay)}`),
    ...openRecalls(recalls),
    ...observations.filter((one) => one.closedOn === null).map((one) => `Seen on ${sayDate(one.date)} and still open: ${one.text}`),
  ];
  const blocks: Block[] = [heading(2, 'Late and open')];
  return lines.length === 0 ? [...blocks, paragraph('Nothing is late and nothing seen is open.')] : [...blocks, { kind: 'list', items: lines }];
}

function itemBlocks(input: HistoryInput): Block[] {
  const rows = input.items.map((one) => [one.name, one.interval, one.lastDone === null ? DASH : sayDate(one.lastDone), String(one.timesDone), `${one.state}${one.due === '' ? '' : `, ${one.due}`}`, one.gaps.join('; ') || DASH]);
  return [
    heading(2, 'Service items'),
    table('Every item that is cared for, when it was last done, and what is missing', [['Item', 3], ['Interval', 3], ['Last done', 2], ['Times', 1, 'right'], ['Next', 3], ['Missing', 3]], rows),
    ...historyDutyBlocks(input),
  ];
}

function readingBlocks({ readings, instruments, car }: HistoryInput): Block[] {
  const points = readings.flatMap((one) => (one.whole === null ? [] : [{ date: one.date, value: one.whole, doubtful: one.standing !== 'accepted' }]));
  const rows = readings.map((one) => [sayDate(one.date), `${sayNumber(one.value)} ${one.unit}`, one.source, one.standing === 'accepted' ? '' : one.standing === 'set-aside' ? 'doubtful' : 'dismissed']);
  return [
    heading(2, 'Odometer'),
    ...instruments.map((one) => paragraph(one.text)),
    ...(points.length < 2 ? [] : [{ kind: 'chart', caption: 'Accepted readings against time, replaced instruments added up', unit: car.unit, points } as const]),
    table('Every reading and where it comes from', [['Date', 2], ['Shown', 2, 'right'], ['Source', 2], ['Remark', 2]], rows),
  ];
}

function paperBlocks({ papers }: HistoryInput): Block[] {
  if (papers.length === 0) return [];
  const rows = papers.map((one) => [one.name, one.path ?? 'withheld', one.sha256]);
  return [heading(2, 'Papers'), table('Every paper of the car, where it stands in the pack, and its SHA-256', [['Paper', 4], ['In the pack', 5], ['SHA-256', 6]], rows)];
}

function checkBlocks({ treeSize, root, keyFingerprint }: HistoryInput): Block[] {
  return [
    heading(2, 'How to check this'),
    paragraph('The pack that holds this document also holds the rows of the journal it was made from, each with a proof that it stands in the household’s whole list of entries. Ordinary tools can check the files; the note how-to-check.txt in the pack gives the steps.'),
    { kind: 'facts', rows: [['Entries in the household’s journal', sayNumber(treeSize)], ['Root of its tree', root], ['Fingerprint of its key', keyFingerprint]] },
    paragraph('This shows that nothing in the pack was altered after it was made, and when each entry says it was written. It does not show that what was written is true, and a journal made anew as a whole with another key can be told only by comparing with a seal given earlier.'),
  ];
}
