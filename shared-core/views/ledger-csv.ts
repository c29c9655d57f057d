import { amountText } from '../units/money.ts';
import { csvText } from './csv-text.ts';
import type { LedgerLine } from './ledger-view-schema.ts';

const HEAD = ['date', 'kind', 'amount', 'currency', 'car', 'wish', 'what'];

/** The ledger's lines as a table; amounts in whole units of the currency, with a point, below 0 what came back. */
export function ledgerCsv(lines: readonly LedgerLine[], currency: string): string {
  return csvText([HEAD, ...lines.map((line) => [line.on, line.kind, { figure: amountText(line.minor, currency) }, currency, line.carName ?? '', line.wishName ?? '', line.text])]);
}
