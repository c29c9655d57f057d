import type { HistoryInput } from '../../shared-core/handover/history-input.ts';
import { textFile, type Digests, type PackFile } from '../../shared-core/handover/pack-files.ts';
import { amountText } from '../../shared-core/units/money.ts';
import { csvText, type Cell, type Figure } from '../../shared-core/views/csv-text.ts';

/**
 * The history as tables for any program: RFC 4180, UTF-8, every cell quoted, formulas made harmless (`csvText`).
 */
export function tableFiles(input: HistoryInput, digests: Digests): PackFile[] {
  return [
    csv('data/tables/readings.csv', ['date', 'shown', 'unit', 'instrument', 'whole_distance', 'whole_unit', 'source', 'standing'], input.readings.map((one) => [one.date, one.value, one.unit, one.instrumentSince ?? 'first', one.whole ?? '', one.whole === null ? '' : input.car.unit, one.source, one.standing]), digests),
    csv('data/tables/items.csv', ['item', 'interval', 'last_done', 'times_done', 'state', 'due', 'missing'], input.items.map((one) => [one.name, one.interval, one.lastDone ?? '', one.timesDone, one.state, one.due, [...one.notShown, ...one.gaps].join('; ')]), digests),
    csv('data/tables/recalls.csv', ['number', 'what', 'done', 'how', 'by', 'next'], input.recalls.map((one) => [one.number, one.what, one.doneOn ?? '', one.how ?? '', one.doneBy ?? '', one.nextOn ?? '']), digests),
    csv('data/tables/records.csv', ['date', 'entered', 'written', 'title', 'line', 'work', 'outcome', 'place', 'done_by', 'odometer', 'note'], recordRows(input), digests),
    csv('data/tables/costs.csv', ['date', 'title', 'kind', 'what', 'amount', 'currency', 'printed_total'], costRows(input), digests),
  ];
}

function recordRows(input: HistoryInput): Cell[][] {
  return input.records.flatMap(({ record, enteredAt, written, odometer }) =>
    record.lines.map((line) => [record.date, enteredAt, written, record.title, line.name, line.work, line.outcome, record.place, record.doneBy ?? '', odometer ?? '', line.note]),
  );
}

/** Each line of cost, with the total of the receipt beside it where one is printed; a record with that alone has a row of its own. What came from an earlier keeper stands in that one's currency. */
function costRows({ records }: HistoryInput): Cell[][] {
  return records.flatMap(({ record: { date, title, costs, printedTotalMinor }, currency }) => {
    // Without a currency nobody knows its decimals: smallest units as they stand.
    const amount = (minor: number | null): Figure | '' => (minor === null ? '' : { figure: currency === null ? String(minor) : amountText(minor, currency) });
    const total = amount(printedTotalMinor);
    if (costs.length === 0) return total === '' ? [] : [[date, title, '', '', '', currency ?? '', total]];
    return costs.map((cost) => [date, title, cost.kind, cost.text, amount(cost.amountMinor), currency ?? '', total]);
  });
}

function csv(path: string, head: readonly string[], rows: readonly (readonly Cell[])[], digests: Digests): PackFile {
  return textFile(path, csvText([head, ...rows]), digests);
}
