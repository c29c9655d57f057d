import { sayDate, sayNumber, sayOf } from '../result/words/say.ts';
import { spokenLocale } from '../result/words/speaking.ts';
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
  const title = sayOf('history-title', { car: car.name });
  return {
    title,
    language: spokenLocale(),
    subject: sayOf('history-subject', { car: car.name }),
    foot: sayOf(input.sample ? 'history-foot-sample' : 'history-foot', { title, date: input.today }),
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
    heading(2, sayOf('history-service-items')),
    paragraph(sayOf(isWhole(input.period) ? 'history-items-intro' : 'history-items-intro-days')),
    ...(reckoned === '' ? [] : [paragraph(sayOf('history-items-reckoned', { reckoned }))]),
    table(sayOf('history-items-caption'), [[sayOf('history-item'), 3], [sayOf('history-interval'), 3], [sayOf('history-last-done'), 2], [sayOf('history-times'), 1, 'right'], [sayOf('history-next'), 3], [sayOf('history-history'), 4]], rows),
    ...historyDutyBlocks(input),
  ];
}

function historyOf({ notShown, gaps, timesDone }: HistoryInput['items'][number]): string {
  const open = [...notShown, ...gaps];
  if (open.length > 0) return open.join('; ');
  return timesDone === 0 ? DASH : sayOf('history-continuous');
}

function readingBlocks({ readings, instruments, car }: HistoryInput): Block[] {
  const points = readings.flatMap((one) => (one.whole === null ? [] : [{ date: one.date, value: one.whole, source: one.source }]));
  const left = readings.length - points.length;
  const caption = sayOf(left === 0 ? 'history-chart' : 'history-chart-left', { n: left });
  return [
    heading(2, sayOf('history-odometer')),
    ...instruments.map((one) => paragraph(one.text)),
    ...(points.length < 2 ? [] : [{ kind: 'chart', caption, unit: car.unit, points } as const]),
    readingTable(readings, instruments.length > 0, car.unit),
  ];
}

/** Where an instrument was replaced, each reading says from which it was read, and how far the car had gone in all. */
function readingTable(readings: HistoryInput['readings'], wasReplaced: boolean, unit: string): Block {
  const remark = { accepted: '', 'set-aside': sayOf('history-doubtful'), dismissed: sayOf('history-dismissed') } as const;
  const shown = (one: HistoryReading) => [sayDate(one.date), `${sayNumber(one.value)} ${one.unit}`];
  if (!wasReplaced) return table(sayOf('history-readings-caption'), [[sayOf('history-date'), 2], [sayOf('history-shown'), 2, 'right'], [sayOf('history-source'), 2], [sayOf('history-remark'), 2]], readings.map((one) => [...shown(one), one.source, remark[one.standing]]));
  const rows = readings.map((one) => [
    ...shown(one), one.instrumentSince === null ? sayOf('history-instrument-first') : sayOf('history-instrument-of', { date: one.instrumentSince }), one.whole === null ? DASH : `${sayNumber(one.whole)} ${unit}`, one.source, remark[one.standing],
  ]);
  return table(sayOf('history-readings-caption-instruments'), [[sayOf('history-date'), 2], [sayOf('history-shown'), 2, 'right'], [sayOf('history-instrument'), 2], [sayOf('history-whole-distance'), 2, 'right'], [sayOf('history-source'), 3], [sayOf('history-remark'), 2]], rows);
}

function wearBlocks({ wear }: HistoryInput): Block[] {
  if (wear.length === 0) return [];
  const rows = wear.map((one) => [one.what, sayOf('history-measured-times', { n: one.times, from: one.from }), one.newest, one.limit, one.verdict]);
  return [heading(2, sayOf('history-measured-wear')), table(sayOf('history-wear-caption'), [[sayOf('history-what'), 3], [sayOf('history-measured'), 3], [sayOf('history-newest'), 3], [sayOf('history-limit'), 2], [sayOf('history-comes-to'), 5]], rows)];
}

function paperBlocks({ papers }: HistoryInput): Block[] {
  if (papers.length === 0) return [];
  const rows = papers.map((one) => [one.name, one.path ?? sayOf('history-withheld'), one.sha256 ?? sayOf('history-not-given')]);
  return [heading(2, sayOf('history-papers')), table(sayOf('history-papers-caption'), [[sayOf('history-paper'), 4], [sayOf('history-in-pack'), 5], [sayOf('history-digest'), 6]], rows)];
}

function checkBlocks({ treeSize, root, keyFingerprint }: HistoryInput): Block[] {
  return [
    heading(2, sayOf('history-check')),
    paragraph(sayOf('history-check-intro', { note: 'data/how-to-check.txt', bag: 'bagit.txt' })),
    { kind: 'list', items: [
      sayOf('history-check-files', { commands: sayOf('history-and', { a: 'sha512sum -c manifest-sha512.txt', b: 'sha512sum -c tagmanifest-sha512.txt' }) }),
      sayOf('history-check-key', { command: 'openssl pkeyutl -verify -pubin -inkey data/journal/household-key.pem -rawin -in signed-contents.json -sigfile signed-contents.sig' }),
      sayOf('history-check-rows', { files: sayOf('history-and', { a: 'data/journal/rows.json', b: 'seal.json' }), schema: 'data/schema' }),
      sayOf('history-check-program', { command: 'trunnion check' }),
    ] },
    { kind: 'facts', rows: [[sayOf('history-check-entries'), sayNumber(treeSize)], [sayOf('history-check-root'), root], [sayOf('history-check-fingerprint'), keyFingerprint]] },
    paragraph(sayOf('history-check-shows')),
  ];
}
