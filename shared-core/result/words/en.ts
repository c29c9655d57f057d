import { ALLOWANCE_WORDS } from './en-allowance.ts';
import { BOOKING_WORDS } from './en-booking.ts';
import { BUDGET_WORDS } from './en-budget.ts';
import { CALENDAR_WORDS } from './en-calendar.ts';
import { CARD_WORDS } from './en-card.ts';
import { CARE_WORDS } from './en-care.ts';
import { CHECK_WORDS } from './en-check.ts';
import { STATUS_WORDS } from './en-status.ts';
import { TAKE_IN_WORDS } from './en-take-in.ts';
import { COVERAGE_WORDS } from './en-coverage.ts';
import { FOLLOW_UP_WORDS } from './en-follow-up.ts';
import { DOING_WORDS } from './en-doing.ts';
import { FIGURE_WORDS } from './en-figures.ts';
import { HISTORY_WORDS } from './en-history.ts';
import { IMPORT_WORDS } from './en-import.ts';
import { INTAKE_WORDS } from './en-intake.ts';
import { LEDGER_WORDS } from './en-ledger.ts';
import { ORDER_WORDS } from './en-order.ts';
import { PAPER_WORDS } from './en-papers.ts';
import { PARTS_WORDS } from './en-parts.ts';
import { PLACED_ORDER_WORDS } from './en-placed-order.ts';
import { PLAN_INSTANCE_WORDS } from './en-plan-instance.ts';
import { PLAN_WORDS } from './en-plan.ts';
import { REFUSAL_WORDS } from './en-refusals.ts';
import { REMINDER_WORDS } from './en-reminder.ts';
import { SEARCH_WORDS } from './en-search.ts';
import { SET_WORDS } from './en-sets.ts';
import { SHEET_WORDS } from './en-sheet.ts';
import { SHELF_WORDS } from './en-shelf.ts';
import { SHELL_WORDS } from './en-shell.ts';
import { USAGE_REFUSALS, USAGE_WORDS } from './en-usage.ts';
import { WEAR_REFUSALS, WEAR_WORDS } from './en-wear.ts';
import { WINDOW_WORDS } from './en-window.ts';
import type { Phrases } from './phrase.ts';

/** British sentences by key. `{name}` is filled with the message's value of that name. */
export const EN: Phrases = {
  ...REMINDER_WORDS,
  ...ALLOWANCE_WORDS,
  ...BOOKING_WORDS,
  ...BUDGET_WORDS,
  ...CALENDAR_WORDS,
  ...CARD_WORDS,
  ...CARE_WORDS,
  ...CHECK_WORDS,
  ...TAKE_IN_WORDS,
  ...COVERAGE_WORDS,
  ...DOING_WORDS,
  ...FOLLOW_UP_WORDS,
  ...FIGURE_WORDS,
  ...HISTORY_WORDS,
  ...IMPORT_WORDS,
  ...INTAKE_WORDS,
  ...LEDGER_WORDS,
  ...SEARCH_WORDS,
  ...ORDER_WORDS,
  ...PAPER_WORDS,
  ...PARTS_WORDS,
  ...PLACED_ORDER_WORDS,
  ...PLAN_INSTANCE_WORDS,
  ...PLAN_WORDS,
  ...REFUSAL_WORDS,
  ...SET_WORDS,
  ...SHEET_WORDS,
  ...SHELF_WORDS,
  ...SHELL_WORDS,
  ...STATUS_WORDS,
  ...USAGE_REFUSALS,
  ...USAGE_WORDS,
  ...WEAR_REFUSALS,
  ...WINDOW_WORDS,
  ...WEAR_WORDS,
};
