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
  return [heading(2, 'Work records'), paragraph(intro), ...input.records.flatMap((one) => recordBlocks(one, input))];
}

function recordBlocks(one: HistoryWork, { currency, previous }: HistoryInput): Block[] {
  const { record } = one;
  return [
    heading(3, `${sayDate(record.date)}: ${record.title}`),
    { kind: 'facts', rows: factsOf(one, previous.every((pack) => pack.path !== null)) },
    linesTable(record),
    ...costBlocks(one, currency),
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

function factsOf({ record, enteredAt, written, odometer, score, withheld, earlierKeeper }: HistoryWork, isProven: boolean): [string, string][] {
  const missing = [score.what ? null : 'what was done', score.when ? null : 'a date noted at the time', score.who ? null : 'who did it', score.approved ? null : 'who approved it'].filter((part) => part !== null);
  const rows: [string, string | null][] = [
    ['Keeper', earlierKeeper ? `an earlier one; ${isProven ? 'proven by the pack in data/previous' : 'not proven here, for the earlier pack is left out'}` : null],
    ['Written down', `${WRITTEN[written]} (${sayMoment(enteredAt)})`],
    ['Where', record.place === 'home' ? 'at home' : `at a garage${record.placeName === null ? '' : `: ${record.placeName}`}`],
    ['Done by', record.doneBy],
    ['Approved by', record.approvedBy],
    ['Reference', record.reference],
    ['By what data', record.method],
    ['Odometer', odometer],
    ['Holds of a full entry', `${score.held} of 4${missing.length === 0 ? '' : `; missing: ${missing.join(', ')}`}`],
    ['Withheld', withheld.length === 0 ? null : withheld.map(withheldWords).join(', ')],
  ];
  return rows.flatMap(([label, value]) => (value === null ? [] : [[label, value]]));
}

function costBlocks({ record }: HistoryWork, currency: string): Block[] {
  const total = record.printedTotalMinor ?? record.costs.reduce((sum, line) => sum + line.amountMinor, 0);
  if (record.costs.length === 0 && record.printedTotalMinor === null) return [];
  const rows = [...record.costs.map((line) => [line.text, line.kind, amountText(line.amountMinor, currency)]), [record.printedTotalMinor === null ? 'Sum' : 'Total as printed', '', amountText(total, currency)]];
  return [table(`Cost in ${currency}`, [['What', 5], ['Kind', 2], ['Amount', 2, 'right']], rows)];
}
