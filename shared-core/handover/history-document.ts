import { sayDate, sayNumber } from '../result/words/say.ts';
import { heading, paragraph, table, type Block, type DocumentValue } from './document-value.ts';
import { historyDutyBlocks } from './history-duties.ts';
import { historyRecordBlocks } from './history-records.ts';
import type { HistoryInput, HistoryReading } from './history-input.ts';
import { sayReckonedWith } from './left-out.ts';
import { isWhole } from './pack-period.ts';
import { coverBlocks, summaryBlocks } from './history-summary.ts';
import { statusBlocks } from './status-blocks.ts';

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
      ...coverBlocks(input, title),
      ...summaryBlocks(input),
      ...statusBlocks(input),
      ...readingBlocks(input),
      ...itemBlocks(input),
      ...wearBlocks(input),
      ...historyRecordBlocks(input),
      ...paperBlocks(input),
      ...checkBlocks(input),
    ],
  };
}

function itemBlocks(input: HistoryInput): Block[] {
  const rows = input.items.map((one) => [one.name, one.interval, one.lastDone === null ? DASH : sayDate(one.lastDone), String(one.timesDone), `${one.state}${one.due === '' ? '' : `, ${one.due}`}`, historyOf(one)]);
  const reckoned = sayReckonedWith(input.leftOut);
  return [
    heading(2, 'Service items'),
    paragraph(`Continuous: done each time within its interval, ${isWhole(input.period) ? 'from the first record to today' : 'over the days shown'}. A gap is named with its length and its days; what nobody knows is called unknown.`),
    ...(reckoned === '' ? [] : [paragraph(`When each is due next is reckoned with what is not shown as well: ${reckoned}.`)]),
    table('Every item that is cared for, when it was last done, and its history', [['Item', 3], ['Interval', 3], ['Last done', 2], ['Times', 1, 'right'], ['Next', 3], ['History', 4]], rows),
    ...historyDutyBlocks(input),
  ];
}

function historyOf({ notShown, gaps, timesDone }: HistoryInput['items'][number]): string {
  const open = [...notShown, ...gaps];
  if (open.length > 0) return open.join('; ');
  return timesDone === 0 ? DASH : 'continuous';
}

function readingBlocks({ readings, instruments, car }: HistoryInput): Block[] {
  const points = readings.flatMap((one) => (one.whole === null ? [] : [{ date: one.date, value: one.whole, source: one.source }]));
  const left = readings.length - points.length;
  const caption = `Accepted readings against time, replaced instruments added up${left === 0 ? '' : `; ${left} doubtful or dismissed stand in the table only`}`;
  return [
    heading(2, 'Odometer'),
    ...instruments.map((one) => paragraph(one.text)),
    ...(points.length < 2 ? [] : [{ kind: 'chart', caption, unit: car.unit, points } as const]),
    readingTable(readings, instruments.length > 0, car.unit),
  ];
}

/** Where an instrument was replaced, each reading says from which it was read, and how far the car had gone in all. */
function readingTable(readings: HistoryInput['readings'], wasReplaced: boolean, unit: string): Block {
  const remark = { accepted: '', 'set-aside': 'doubtful', dismissed: 'dismissed' } as const;
  const shown = (one: HistoryReading) => [sayDate(one.date), `${sayNumber(one.value)} ${one.unit}`];
  if (!wasReplaced) return table('Every reading shown and where it comes from', [['Date', 2], ['Shown', 2, 'right'], ['Source', 2], ['Remark', 2]], readings.map((one) => [...shown(one), one.source, remark[one.standing]]));
  const rows = readings.map((one) => [
    ...shown(one), one.instrumentSince === null ? 'the first' : `of ${sayDate(one.instrumentSince)}`, one.whole === null ? DASH : `${sayNumber(one.whole)} ${unit}`, one.source, remark[one.standing],
  ]);
  return table('Every reading shown: what the instrument showed, which instrument it was, and how far the car had gone in all', [['Date', 2], ['Shown', 2, 'right'], ['Instrument', 2], ['Whole distance', 2, 'right'], ['Source', 3], ['Remark', 2]], rows);
}

function wearBlocks({ wear }: HistoryInput): Block[] {
  if (wear.length === 0) return [];
  const rows = wear.map((one) => [one.what, one.times === 1 ? `once, on ${sayDate(one.from)}` : `${one.times} times since ${sayDate(one.from)}`, one.newest, one.limit, one.verdict]);
  return [heading(2, 'Measured wear'), table('What was measured, the newest value, its limit, and what it comes to', [['What', 3], ['Measured', 3], ['Newest', 3], ['Limit', 2], ['Comes to', 5]], rows)];
}

function paperBlocks({ papers }: HistoryInput): Block[] {
  if (papers.length === 0) return [];
  const rows = papers.map((one) => [one.name, one.path ?? 'withheld', one.sha256 ?? 'not given']);
  return [heading(2, 'Papers'), table('Every paper of what is shown, where it stands in the pack, and its SHA-256', [['Paper', 4], ['In the pack', 5], ['SHA-256', 6]], rows)];
}

function checkBlocks({ treeSize, root, keyFingerprint }: HistoryInput): Block[] {
  return [
    heading(2, 'How to check this'),
    paragraph('The pack that holds this document also holds the rows of the journal it was made from, each with a proof that it stands in the household’s whole list of entries. No special program is needed: the note data/how-to-check.txt gives every step. In the folder that holds bagit.txt:'),
    { kind: 'list', items: [
      'sha512sum -c manifest-sha512.txt and sha512sum -c tagmanifest-sha512.txt: is every file as it was?',
      'openssl pkeyutl -verify -pubin -inkey data/journal/household-key.pem -rawin -in signed-contents.json -sigfile signed-contents.sig: did the keeper’s key sign this list of files?',
      'data/journal/rows.json and seal.json: was each entry in the journal, unchanged, when it was sealed? The note gives the rules, data/schema the form of each file.',
      'trunnion check, with the pack and the seal that the keeper gave you earlier, does all of it and names each fault.',
    ] },
    { kind: 'facts', rows: [['Entries in the household’s journal', sayNumber(treeSize)], ['Root of its tree', root], ['Fingerprint of its key', keyFingerprint]] },
    paragraph('This shows that nothing in the pack was altered after it was made, and when each entry says it was written. It does not show that what was written is true, and a journal made anew as a whole with another key can be told only by comparing with a seal given earlier.'),
  ];
}
