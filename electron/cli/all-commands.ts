import type { Command } from './command.ts';
import { backtestCommand } from './commands/backtest.ts';
import { backupCommand } from './commands/backup.ts';
import { calendarCommand } from './commands/calendar.ts';
import { budgetCommand } from './commands/budget.ts';
import { checkCommand } from './commands/check.ts';
import { packCommand } from './commands/pack.ts';
import { dueCommand } from './commands/due.ts';
import { enterCommand } from './commands/enter.ts';
import { examineCommand } from './commands/examine.ts';
import { findCommand } from './commands/find.ts';
import { forecastCommand } from './commands/forecast.ts';
import { importCommand } from './commands/import.ts';
import { leaveCommand } from './commands/leave.ts';
import { ledgerCommand } from './commands/ledger.ts';
import { orderCommand } from './commands/order.ts';
import { papersCommand } from './commands/papers.ts';
import { planCommand } from './commands/plan.ts';
import { pricesCommand } from './commands/prices.ts';
import { quotesCommand } from './commands/quotes.ts';
import { readingCommand } from './commands/reading.ts';
import { recordCommand } from './commands/record.ts';
import { requestCommand } from './commands/request.ts';
import { sealCommand } from './commands/seal.ts';
import { serveCommand } from './commands/serve.ts';
import { takeInCommand } from './commands/take-in.ts';
import { wishesCommand } from './commands/wishes.ts';

/** Every command of the terminal. */
export const commands: readonly Command[] = [
  dueCommand,
  findCommand,
  enterCommand,
  planCommand,
  orderCommand,
  budgetCommand,
  ledgerCommand,
  wishesCommand,
  quotesCommand,
  readingCommand,
  recordCommand,
  requestCommand,
  papersCommand,
  packCommand,
  checkCommand,
  takeInCommand,
  sealCommand,
  leaveCommand,
  calendarCommand,
  importCommand,
  pricesCommand,
  examineCommand,
  backupCommand,
  forecastCommand,
  backtestCommand,
  serveCommand,
];
