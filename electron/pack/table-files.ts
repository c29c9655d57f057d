import Papa from 'papaparse';
import type { HistoryInput } from '../../shared-core/handover/history-input.ts';
import { textFile, type Digests, type PackFile } from '../../shared-core/handover/pack-files.ts';
import { amountText } from '../../shared-core/units/money.ts';

/** How a formula begins. The rule of the package that writes sees no formula in a text of several lines. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * The history as tables for any program: RFC 4180, UTF-8, every cell quoted. A text that a spreadsheet would take for a
 * formula is made harmless by an apostrophe before it.
 *
 * Source: RFC 4180 s2 (from memory); OWASP on CSV injection (seen).
 */
export function tableFiles(input: HistoryInput, digests: Digests): PackFile[] {
  return [
    csv('data/tables/readings.csv', ['date', 'shown', 'unit', 'source', 'standing'], input.readings.map((one) => [one.date, one.value, one.unit, one.source, one.standing]), digests),
    csv('data/tables/items.csv', ['item', 'interval', 'last_done', 'times_done', 'state', 'due', 'missing'], input.items.map((one) => [one.name, one.interval, one.lastDone ?? '', one.timesDone, one.state, one.due, [...one.notShown, ...one.gaps].join('; ')]), digests),
    csv('data/tables/recalls.csv', ['number', 'what', 'done', 'how', 'by', 'next'], input.recalls.map((one) => [one.number, one.what, one.doneOn ?? '', one.how ?? '', one.doneBy ?? '', one.nextOn ?? '']), digests),
    csv('data/tables/records.csv', ['date', 'entered', 'written', 'title', 'line', 'work', 'outcome', 'place', 'done_by', 'odometer', 'note'], recordRows(input), digests),
    csv('data/tables/costs.csv', ['date', 'title', 'kind', 'what', 'amount', 'currency'], costRows(input), digests),
  ];
}

function recordRows(input: HistoryInput): Cell[][] {
  return input.records.flatMap(({ record, enteredOn, written, odometer }) =>
    record.lines.map((line) => [record.date, enteredOn, written, record.title, line.name, line.work, line.outcome, record.place, record.doneBy ?? '', odometer ?? '', line.note]),
  );
}

function costRows(input: HistoryInput): Cell[][] {
  return input.records.flatMap(({ record }) => record.costs.map((cost) => [record.date, record.title, cost.kind, cost.text, amountText(cost.amountMinor, input.currency), input.currency]));
}

type Cell = string | number;

function csv(path: string, head: readonly string[], rows: readonly Cell[][], digests: Digests): PackFile {
  const text = Papa.unparse([[...head], ...rows], { quotes: true, escapeFormulae: FORMULA, newline: '\r\n' });
  return textFile(path, `${text}\r\n`, digests);
}
