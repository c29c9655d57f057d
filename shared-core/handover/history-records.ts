import type { RecordElement, RecordScore } from '../records/record-score.ts';
import { hasWords, sayMoment, sayOf } from '../result/words/say.ts';
import { amountText } from '../units/money.ts';
import { heading, paragraph, table, type Block } from './document-value.ts';
import type { HistoryInput, HistoryWork } from './history-input.ts';
import { isWhole } from './pack-period.ts';
import { withheldWords } from './withheld-words.ts';

/** The records, latest first, each with when it was written down, what it holds of a full entry, and its papers. */
export function historyRecordBlocks(input: HistoryInput): Block[] {
  const intro = input.records.length === 0 ? sayOf(isWhole(input.period) ? 'history-no-work' : 'history-no-work-days') : sayOf('history-in-utc');
  return [heading(2, sayOf('history-work-records')), paragraph(intro), ...input.records.flatMap(recordBlocks)];
}

function recordBlocks(one: HistoryWork): Block[] {
  const { record } = one;
  return [
    heading(3, sayOf('history-record', { date: record.date, title: record.title })),
    { kind: 'facts', rows: factsOf(one) },
    linesTable(record),
    ...costBlocks(one),
    ...(record.note === '' ? [] : [paragraph(record.note)]),
    ...one.amendments.map((change) => paragraph(sayOf('history-amended', { moment: sayMoment(change.at), why: change.why }))),
    ...(one.papers.length === 0 ? [] : [{ kind: 'papers', items: one.papers.map(({ name, path, sha256 }) => ({ caption: name, paper: sha256 ?? '', path })) } as const]),
  ];
}

/** The words of a kind, where it has any. */
function named(beginning: string, kind: string): string {
  const key = `${beginning}-${kind}`;
  return hasWords(key) ? sayOf(key) : kind;
}

/** Notes have a column only where there are any. */
function linesTable({ title, lines }: HistoryWork['record']): Block {
  const rows = lines.map((line) => [line.name, named('history-work', line.work), named('history-outcome', line.outcome), line.note]);
  const [caption, line, work, outcome] = [sayOf('history-lines-of', { title }), sayOf('history-line'), sayOf('history-work'), sayOf('history-outcome')];
  if (lines.every((one) => one.note === '')) return table(caption, [[line, 6], [work, 2], [outcome, 2]], rows.map((row) => row.slice(0, 3)));
  return table(caption, [[line, 4], [work, 1], [outcome, 2], [sayOf('history-note'), 3]], rows);
}

const ELEMENTS: readonly RecordElement[] = ['what', 'when', 'who', 'approved'];

function scoreText(score: RecordScore): string {
  const lacking = ELEMENTS.filter((element) => !score[element]);
  const named = (of: readonly RecordElement[]) => of.map((element) => sayOf(`history-element-${element}`)).join(', ');
  const [missing, withheld] = [named(lacking.filter((element) => !score.withheld.includes(element))), named(score.withheld)];
  const held = sayOf('history-holds', { held: score.held });
  const said = missing === '' ? held : sayOf('history-holds-missing', { said: held, elements: missing });
  return withheld === '' ? said : sayOf('history-holds-withheld', { said, elements: withheld });
}

function factsOf({ record, enteredAt, written, odometer, score, withheld, withheldBefore, earlier }: HistoryWork): [string, string][] {
  const rows: [string, string | null][] = [
    [sayOf('history-keeper'), earlier === null ? null : earlier.proven ? sayOf('history-keeper-proven', { folder: 'data/previous' }) : sayOf('history-keeper-unproven')],
    [sayOf('history-written-down'), sayOf(`history-written-${written}`, { moment: sayMoment(enteredAt) })],
    [sayOf('history-where'), record.place === 'home' ? sayOf('history-at-home') : record.placeName === null ? sayOf('history-at-garage') : sayOf('history-at-garage-named', { garage: record.placeName })],
    [sayOf('history-done-by'), record.doneBy],
    [sayOf('history-approved-by'), record.approvedBy],
    [sayOf('history-reference'), record.reference],
    [sayOf('history-by-what-data'), record.method],
    [sayOf('history-odometer'), odometer],
    [sayOf('history-full-entry'), scoreText(score)],
    [sayOf('history-withheld-label'), withheld.length === 0 ? null : withheld.map(withheldWords).join(', ')],
    [sayOf('history-withheld-before-label'), withheldBefore.length === 0 ? null : withheldBefore.map(withheldWords).join(', ')],
  ];
  return rows.flatMap(([label, value]) => (value === null ? [] : [[label, value]]));
}

function costBlocks({ record, currency }: HistoryWork): Block[] {
  const total = record.printedTotalMinor ?? record.costs.reduce((sum, line) => sum + line.amountMinor, 0);
  if (record.costs.length === 0 && record.printedTotalMinor === null) return [];
  const said = (minor: number) => (currency === null ? String(minor) : amountText(minor, currency));
  const rows = [...record.costs.map((line) => [line.text, named('cost-kind', line.kind), said(line.amountMinor)]), [sayOf(record.printedTotalMinor === null ? 'history-sum' : 'history-total-printed'), '', said(total)]];
  return [table(currency === null ? sayOf('history-cost-no-currency') : sayOf('history-cost-in', { currency }), [[sayOf('history-what'), 5], [sayOf('history-kind'), 2], [sayOf('history-amount'), 2, 'right']], rows)];
}
