import { measurementTaken } from '../care/measurement.ts';
import { distanceAllowanceRemoved, distanceAllowanceSet } from '../care/distance-allowance.ts';
import { obligationSet } from '../care/obligation.ts';
import { recallSet } from '../care/recall.ts';
import { renewalRecorded } from '../care/renewal.ts';
import { serviceItemRemoved, serviceItemSet } from '../care/service-item.ts';
import { servicePlanRemoved, servicePlanSet } from '../care/service-plan.ts';
import { wearLimitSet } from '../care/wear-limit.ts';
import { cardFigureCleared, cardFigureSet } from '../fleet/card-figure.ts';
import { carSet } from '../fleet/car.ts';
import { carCameBack, carLeft } from '../fleet/departure.ts';
import { householdSet } from '../fleet/household.ts';
import { instrumentReplaced } from '../fleet/instrument.ts';
import { layUpRemoved, layUpSet } from '../fleet/lay-up.ts';
import { readingRecorded } from '../fleet/reading.ts';
import { useChangeRemoved, useChangeSet } from '../fleet/use-change.ts';
import { wheelMoved, wheelSet } from '../fleet/wheel.ts';
import type { AnyEntryKind } from '../journal/entry-kind.ts';
import type { EntryKinds } from '../journal/replay.ts';
import { withdrawnKind } from '../journal/withdrawal.ts';
import { heldQuoteRemoved, heldQuoteSet } from '../ledger/held-quote.ts';
import { ledgerSettingsSet } from '../ledger/ledger-settings.ts';
import { wishRemoved, wishSet } from '../ledger/wish.ts';
import { yearlyFuelRemoved, yearlyFuelSet } from '../ledger/yearly-fuel.ts';
import { deliveryRecorded } from '../parts/delivery.ts';
import { lotSet } from '../parts/lot.ts';
import { neverMixRemoved, neverMixSet } from '../parts/never-mix.ts';
import { offerSet } from '../parts/offer.ts';
import { orderReturned } from '../parts/order-return.ts';
import { orderSet } from '../parts/order.ts';
import { numberSuperseded, supersededRemoved } from '../parts/part-number.ts';
import { preferenceRemoved, preferenceSet } from '../parts/part-preference.ts';
import { partSet } from '../parts/part.ts';
import { partsSettingsSet } from '../parts/parts-settings.ts';
import { shelfTaken } from '../parts/shelf-taking.ts';
import { specificationSet } from '../parts/specification.ts';
import { stockTaken } from '../parts/stocktake.ts';
import { supplierSet } from '../parts/supplier.ts';
import { taskToolsSet, toolRemoved, toolSet } from '../parts/tool.ts';
import { wasteKept } from '../parts/waste.ts';
import { importKept } from '../records/import.ts';
import { intakeAnswered } from '../records/intake-answer.ts';
import { observationAmended } from '../records/observation-amended.ts';
import { observationNoted } from '../records/observation.ts';
import { paperDescribed } from '../records/paper-note.ts';
import { paperRedacted, redactionRemoved } from '../records/paper-redaction.ts';
import { paperTied, paperUntied } from '../records/paper-tie.ts';
import { paperKept } from '../records/paper.ts';
import { packTakenIn } from '../records/previous-pack.ts';
import { workAmended } from '../records/work-amended.ts';
import { workRecorded } from '../records/work-record.ts';
import { accessGroupRemoved, accessGroupSet } from '../sessions/access-group.ts';
import { carDaysRemoved, carDaysSet } from '../sessions/car-days.ts';
import { placeDaysRemoved, placeDaysSet } from '../sessions/place-days.ts';
import { placeAssumed, placeConfirmed, placeRemoved, placeSet } from '../sessions/place.ts';
import { planSettingsSet } from '../sessions/plan-settings.ts';
import { sessionRemoved, sessionSet } from '../sessions/session.ts';
import { worthWhileRemoved, worthWhileSet } from '../sessions/worth-while.ts';
import { followUpRemoved, followUpSet } from '../work/follow-up.ts';
import { findMade, photoRemoved, photoTaken, stepTicked, stepValueRead, stepValueRemoved, tickRemoved, timeTaken, workBegun } from '../work/doing.ts';
import { bookingRemoved, bookingSet } from '../work/booking.ts';
import { taskSheetRemoved, taskSheetSet } from '../work/task-sheet.ts';

const RECORD_KINDS: readonly AnyEntryKind[] = [importKept, packTakenIn, paperKept, paperDescribed, paperTied, paperUntied, paperRedacted, redactionRemoved, workRecorded, workAmended, observationNoted, observationAmended];

const LEDGER_KINDS: readonly AnyEntryKind[] = [ledgerSettingsSet, yearlyFuelSet, yearlyFuelRemoved, wishSet, wishRemoved, heldQuoteSet, heldQuoteRemoved];

const ALL: readonly AnyEntryKind[] = [
  cardFigureSet, cardFigureCleared, servicePlanSet, servicePlanRemoved, intakeAnswered, recallSet, distanceAllowanceSet, distanceAllowanceRemoved,
  householdSet, carSet, carLeft, carCameBack, readingRecorded, instrumentReplaced, layUpSet, layUpRemoved, useChangeSet, useChangeRemoved, serviceItemSet, serviceItemRemoved, obligationSet, renewalRecorded,
  wheelSet, wheelMoved, measurementTaken, wearLimitSet,
  specificationSet, partSet, preferenceSet, preferenceRemoved, neverMixSet, neverMixRemoved, numberSuperseded, supersededRemoved, supplierSet, offerSet, partsSettingsSet, lotSet,
  orderSet, deliveryRecorded, orderReturned, shelfTaken, stockTaken, wasteKept, toolSet, toolRemoved, taskToolsSet,
  taskSheetSet, taskSheetRemoved, bookingSet, bookingRemoved,
  followUpSet, followUpRemoved,
  workBegun, stepTicked, tickRemoved, stepValueRead, stepValueRemoved, timeTaken, photoTaken, photoRemoved, findMade,
  placeSet, placeRemoved, placeAssumed, placeConfirmed, placeDaysSet, placeDaysRemoved, carDaysSet, carDaysRemoved, planSettingsSet, accessGroupSet, accessGroupRemoved, worthWhileSet, worthWhileRemoved, sessionSet, sessionRemoved,
  ...RECORD_KINDS, ...LEDGER_KINDS, withdrawnKind,
];

/** Every kind of entry that a journal may hold. */
export const entryKinds: EntryKinds = new Map(ALL.map((kind) => [kind.kind, kind]));
