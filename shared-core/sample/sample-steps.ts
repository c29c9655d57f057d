import type { LocalDate } from '../calendar/local-date.ts';
import type { Json } from '../journal/canonical-json.ts';
import alder from './alder.json' with { type: 'json' };
import { carSteps } from './car-steps.ts';
import ember from './ember.json' with { type: 'json' };
import heron from './heron.json' with { type: 'json' };
import household from './household.json' with { type: 'json' };
import { inboxSteps } from './inbox-steps.ts';
import { ledgerSteps } from './ledger-steps.ts';
import { partsSteps } from './parts-steps.ts';
import pip from './pip.json' with { type: 'json' };
import { resolveDates } from './resolve-dates.ts';
import { sampleCarSchema } from './sample-car.ts';
import type { SampleStep } from './sample-step.ts';
import { sampleStockSchema } from './sample-stock.ts';
import { sessionSteps } from './session-steps.ts';
import { sheetSteps } from './sheet-steps.ts';
import { stockSteps } from './stock-steps.ts';
import wren from './wren.json' with { type: 'json' };

const CARS: readonly Json[] = [pip, alder, wren, ember, heron];
const CURRENCY = household.household.currency;

/**
 * Six years of the invented household, in order of date, all of it before today. Each step is to be done through the
 * real operation with its own day as today (see `runSample`): nothing is written past the judgement of the core.
 *
 * @example sampleSteps('2026-11-25')[0] //=> { on: '2020-11-25', operation: 'household.start', request: { ... } }
 */
export function sampleSteps(today: LocalDate): readonly SampleStep[] {
  const stock = sampleStockSchema.parse(resolveDates(household, today));
  const cars = CARS.map((car) => sampleCarSchema.parse(resolveDates(car, today)));
  const steps = [...stockSteps(stock), ...cars.flatMap((car) => carSteps(car, CURRENCY)), ...sessionSteps(today), ...partsSteps(today), ...ledgerSteps(today), ...sheetSteps(today), ...inboxSteps(today, CURRENCY)];
  return steps.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}
