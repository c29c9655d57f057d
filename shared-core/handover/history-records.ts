import type { RecordElement, RecordScore } from '../records/record-score.ts';
import { sayDate, sayMoment } from '../result/words/say.ts';
import { amountText } from '../units/money.ts';
import { heading, paragraph, table, type Block } from './document-value.ts';
import type { HistoryInput, HistoryWork } from './history-input.ts';
import { isWhole } from './pack-period.ts';
import { withheldWords } from './withheld-words.ts';

const WRITTEN: Readonly<Record<HistoryWork['written'], string>> = {
  'same-day': 'on the same day',
  'within-a-week': 'within a week',
  later: 'later',
  reconstructed: 'from memory',
};

const OUTCOME: Readonly<Record<string, string>> = { done: 'done', good: 'good', watch: 'to be watched', acted: 'put right', 'not-done': 'not done' };

const IN_UTC = 'When something was written down is told in UTC, as the journal keeps it: near midnight the calendar of the place may have had the day before or after.';

/** The records, latest first, each with when it was written down, what it holds of a full entry, and its papers. */
export function historyRecordBlocks(input: HistoryInput): Block[] {
  const intro = input.records.length === 0 ? (isWhole(input.period) ? 'No work is recorded.' : 'No work is recorded on the days shown.') : IN_UTC;
  return [heading(2, 'Work records'), paragraph(intro), ...input.records.flatMap(recordBlocks)];
}

function recordBlocks(one: HistoryWork): Block[] {
  const { record } = one;
  return [
    heading(3, `${sayDate(record.date)}: ${record.title}`),
    { kind: 'facts', rows: factsOf(one) },
    linesTable(record),
    ...costBlocks(one),
    ...(record.note === '' ? [] : [paragraph(record.note)]),
    ...one.amendments.map((change) => paragraph(`Amended on ${sayMoment(change.at)}: ${change.why}`)),
    ...(one.papers.length === 0 ? [] : [{ kind: 'papers', items: one.papers.map(({ name, path, sha256 }) => ({ caption: name, paper: sha256 ?? '', path })) } as const]),
  ];
}

/** Notes have a column only where there are any. */
function linesTable({ title, lines }: HistoryWork['record']): Block {
  const rows = lines.map((line) => [line.name, line.work, OUTCOME[line.outcome] ?? line.outcome, line.note]);
  if (lines.every((line) => line.note === '')) return table(`Lines of ${title}`, [['Line', 6], ['Work', 2], ['Outcome', 2]], rows.map((row) => row.slice(0, 3)));
  return table(`Lines of ${title}`, [['Line', 4], ['Work', 1], ['Outcome', 2], ['Note', 3]], rows);
}

const ELEMENTS: Readonly<Record<RecordElement, string>> = { what: 'what was done', when: 'a date noted at the time', who: 'who did it', approved: 'who approved it' };

function scoreText(score: RecordScore): string {
  const lacking = (Object.keys(ELEMENTS) as RecordElement[]).filter((element) => !score[element]);
  const said = (word: string, of: readonly RecordElement[]) => (of.length === 0 ? '' : `; ${word}: ${of.map((element) => ELEMENTS[element]).join(', ')}`);
  return `${score.held} of 4${said('missing', lacking.filter((element) => !score.withheld.includes(element)))}${said('withheld by the earlier keeper', score.withheld)}`;
}

function factsOf({ record, enteredAt, written, odometer, score, withheld, withheldBefore, earlier }: HistoryWork): [string, string][] {
  const rows: [string, string | null][] = [
    ['Keeper', earlier === null ? null : `an earlier one; ${earlier.proven ? 'proven by the pack in data/previous' : 'not proven here, for the earlier pack is left out'}`],
    ['Written down', `${WRITTEN[written]} (${sayMoment(enteredAt)})`],
    ['Where', record.place === 'home' ? 'at home' : `at a garage${record.placeName === null ? '' : `: ${record.placeName}`}`],
    ['Done by', record.doneBy],
    ['Approved by', record.approvedBy],
    ['Reference', record.reference],
    ['By what data', record.method],
    ['Odometer', odometer],
    ['Holds of a full entry', scoreText(score)],
    ['Withheld', withheld.length === 0 ? null : withheld.map(withheldWords).join(', ')],
    ['Withheld by the earlier keeper', withheldBefore.length === 0 ? null : withheldBefore.map(withheldWords).join(', ')],
  ];
  return rows.flatMap(([label, value]) => (value === null ? [] : [[label, value]]));
}

function costBlocks({ record, currency }: HistoryWork): Block[] {
  const total = record.printedTotalMinor ?? record.costs.reduce((sum, line) => sum + line.amountMinor, 0);
  if (record.costs.length === 0 && record.printedTotalMinor === null) return [];
  const said = (minor: number) => (currency === null ? String(minor) : amountText(minor, currency));
  const rows = [...record.costs.map((line) => [line.text, line.kind, said(line.amountMinor)]), [record.printedTotalMinor === null ? 'Sum' : 'Total as printed', '', said(total)]];
  return [table(currency === null ? 'Cost in the smallest unit of a currency that the earlier keeper’s pack does not name' : `Cost in ${currency}`, [['What', 5], ['Kind', 2], ['Amount', 2, 'right']], rows)];
}
