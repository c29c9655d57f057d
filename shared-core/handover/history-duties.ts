import { sayDate, sayOf } from '../result/words/say.ts';
import { table, type Block } from './document-value.ts';
import type { HistoryInput, HistoryRecall } from './history-input.ts';

const DASH = '–';

/** The duties of a car as tables: its obligations, the maker's recalls with how each was done, and what is warranted by distance. */
export function historyDutyBlocks({ obligations, recalls, warranties }: HistoryInput): Block[] {
  const tables = [
    table(sayOf('history-obligations-caption'), [[sayOf('history-obligation'), 3], [sayOf('history-valid-until'), 2]], obligations.map((one) => [one.name, sayDate(one.lastValidDay)])),
    table(sayOf('history-recalls-caption'), [[sayOf('history-number'), 2], [sayOf('history-what'), 4], [sayOf('history-done'), 2], [sayOf('history-how'), 4], [sayOf('history-by-whom'), 3], [sayOf('history-next'), 2]], recalls.map(recallRow)),
    table(sayOf('history-warranties-caption'), [[sayOf('history-warranty'), 3], [sayOf('history-holds-for'), 4], [sayOf('history-now'), 3]], warranties.map((one) => [one.name, one.holds, one.now])),
  ];
  return tables.filter((one) => one.kind === 'table' && one.rows.length > 0);
}

/** Recalls that somebody must still see to, as lines. */
export function openRecalls(recalls: readonly HistoryRecall[]): string[] {
  return recalls.flatMap(({ number, what, state, late, nextOn }) => {
    if (state === 'open') return [sayOf('history-recall-open', { number, what })];
    if (state === 'booked') return [sayOf('history-recall-booked', { number, date: nextOn, what })];
    return state === 'again' && late ? [sayOf('history-recall-again', { number, date: nextOn, what })] : [];
  });
}

function recallRow({ number, what, how, doneOn, doneBy, nextOn }: HistoryRecall): string[] {
  return [number, what, doneOn === null ? sayOf('history-not-done') : sayDate(doneOn), how ?? DASH, doneBy ?? DASH, nextOn === null ? DASH : sayDate(nextOn)];
}
