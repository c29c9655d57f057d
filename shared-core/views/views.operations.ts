import { showBooking } from './booking-view.ts';
import { showBudget } from './budget-view.ts';
import { showCalendar } from './calendar-view.ts';
import { showCar } from './car-view.ts';
import { showCard } from './card-view.ts';
import { showClosing } from './closing-view.ts';
import { showCoverage } from './coverage-view.ts';
import { showDoing } from './doing-view.ts';
import { showDue } from './due-view.ts';
import { listImports } from './import/imports-view.ts';
import { showIntake } from './intake-view.ts';
import { showJobSheet, showSheet } from './job-sheet-view.ts';
import { listLedger, showLedger } from './ledger-view.ts';
import { showNeeds } from './needs-view.ts';
import { showParts } from './parts-view.ts';
import { showPlanning } from './planning-view.ts';
import { listLeft, showLeaving } from './leaving-view.ts';
import { listPackPapers } from './pack-papers-view.ts';
import { tryPlan } from './plan-try.ts';
import { putAsideForWish } from './put-aside-for-wish.ts';
import { showQuotes } from './quotes-view.ts';
import { enteringRecord } from './record-entering-view.ts';
import { showReminders } from './reminders-view.ts';
import { showSessions } from './sessions-view.ts';
import { showSheetEditing } from './sheet-editing-view.ts';
import { showWishes } from './wishes-view.ts';
import { showYard } from './yard-view.ts';

/** One question for each screen and command; and the one change that must know what is late. */
export const viewOperations = {
  'wish.put-aside': putAsideForWish,
  'yard.show': showYard,
  'calendar.show': showCalendar,
  'car.show': showCar,
  'card.show': showCard,
  'coverage.show': showCoverage,
  'intake.show': showIntake,
  'import.list': listImports,
  'due.show': showDue,
  'ledger.show': showLedger,
  'ledger.lines': listLedger,
  'quotes.show': showQuotes,
  'needs.show': showNeeds,
  'sheet.show': showSheet,
  'sheet.editing': showSheetEditing,
  'sheet.session': showJobSheet,
  'work.show': showDoing,
  'work.closing': showClosing,
  'parts.show': showParts,
  'plan.try': tryPlan,
  'planning.show': showPlanning,
  'record.entering': enteringRecord,
  'reminders.show': showReminders,
  'sessions.show': showSessions,
  'wishes.show': showWishes,
  'booking.show': showBooking,
  'budget.show': showBudget,
  'car.leaving': showLeaving,
  'car.left': listLeft,
  'pack.papers': listPackPapers,
} as const;
