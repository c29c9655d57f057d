import { sayDate } from '../result/words/say.ts';
import { table, type Block } from './document-value.ts';
import type { HistoryInput, HistoryRecall } from './history-input.ts';

const DASH = '–';

/** The duties of a car as tables: its obligations, the maker's recalls with how each was done, and what is warranted by distance. */
export function historyDutyBlocks({ obligations, recalls, warranties }: HistoryInput): Block[] {
  const tables = [
    table('Obligations and their last valid day', [['Obligation', 3], ['Valid until', 2]], obligations.map((one) => [one.name, sayDate(one.lastValidDay)])),
    table('Recalls of the maker', [['Number', 2], ['What', 4], ['Done', 2], ['How', 4], ['By whom', 3], ['Next', 2]], recalls.map(recallRow)),
    table('Warranties that end by date or distance', [['Warranty', 3], ['Holds for', 4], ['Now', 3]], warranties.map((one) => [one.name, one.holds, one.now])),
  ];
  return tables.filter((one) => one.kind === 'table' && one.rows.length > 0);
}

/** Recalls that somebody must still see to, as lines. */
export function openRecalls(recalls: readonly HistoryRecall[]): string[] {
  return recalls.flatMap(({ number, what, state, late, nextOn }) => {
    const next = nextOn === null ? '' : sayDate(nextOn);
    if (state === 'open') return [`Recall ${number}, not done: ${what}`];
    if (state === 'booked') return [`Recall ${number}, not done, booked for ${next}: ${what}`];
    return state === 'again' && late ? [`Recall ${number}, due again on ${next}: ${what}`] : [];
  });
}

function recallRow({ number, what, how, doneOn, doneBy, nextOn }: HistoryRecall): string[] {
  return [number, what, doneOn === null ? 'not done' : sayDate(doneOn), how ?? DASH, doneBy ?? DASH, nextOn === null ? DASH : sayDate(nextOn)];
}
