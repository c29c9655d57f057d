import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { syncAtLast, withoutSync } from '../../electron/store/write-without-sync.ts';
import { startingSet, type StartingSetKey } from '../../shared-core/care/starting-set.ts';
import { addMonths } from '../../shared-core/calendar/add-months.ts';
import { addDays, localDate, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { must } from '../../shared-core/result/assert.ts';

/** The day on which the large household is looked at. */
export const LARGE_DAY = '2026-11-25';
const CARS = 15;
const YEARS = 20;
const SETS: readonly StartingSetKey[] = ['petrol', 'diesel', 'hybrid', 'electric', 'before-1980', 'camper'];

/**
 * Writes a household of fifteen cars over twenty years through the ordinary operations: each car with a starting set, a reading a month, its work
 * done by its intervals, and its test, tax and insurance. Made by rule and not drawn, so that each run has the same.
 */
export async function writeLargeHousehold(folder: string): Promise<void> {
  const host = composeHost(folder, realWorld(dateOf(LARGE_DAY)));
  if (!host.ok) throw new Error(`the household was refused: ${host.refusal.code}`);
  const call = async (operation: string, request: unknown) => {
    const reply = await host.value.call(operation, request);
    if (!reply.ok) throw new Error(`${operation} was refused: ${JSON.stringify(reply.refusal)}`);
  };
  const { store } = host.value.context.household();
  withoutSync(store);
  await call('household.start', { name: 'Twenty years', currency: 'GBP', unit: 'mi', hemisphere: 'north' });
  for (let at = 0; at < CARS; at += 1) {
    const set = must(SETS[at % SETS.length], 'set');
    const car = `car-${at + 1}`;
    await call('car.add', { id: car, name: `Car ${at + 1} of the yard`, description: set, power: set === 'before-1980' || set === 'camper' ? 'petrol' : set, firstRegistered: addMonths(dateOf(LARGE_DAY), -12 * YEARS), keptSince: addMonths(dateOf(LARGE_DAY), -12 * YEARS) });
    await call('items.start', { car, set });
    await call('import.keep', { car, name: `${car}.csv`, unit: 'mi', text: historyOf(set, at) });
    for (const [kind, days] of [['roadworthiness-test', 40 + at * 21], ['road-tax', 20 + at * 17], ['insurance', 90 + at * 13]] as const) await call('obligation.add', { car, kind, lastValidDay: addDays(dateOf(LARGE_DAY), days) });
  }
  syncAtLast(store);
  await host.value.close();
}

/** A table of a car's twenty years: a reading each month, and what the set's intervals made due, when it did. */
function historyOf(set: StartingSetKey, at: number): string {
  const items = startingSet(set).items.filter((item) => item.anchor === 'completion');
  const rows: string[] = [];
  for (let month = 1; month < 12 * YEARS; month += 1) {
    const date = addDays(addMonths(dateOf(LARGE_DAY), month - 12 * YEARS), at % 9);
    // More in summer, as most cars are used.
    const miles = Math.round(month * (420 + 60 * at) + 300 * Math.sin((month / 6) * Math.PI));
    const done = items.filter((item, index) => item.repeat.months !== null && (month + at + index) % Math.max(6, item.repeat.months) === 0).map((item) => item.name);
    rows.push(`${date},${miles},"${done.join('; ')}",${done.length === 0 ? '' : (done.length * 37.5).toFixed(2)}`);
  }
  return `date,miles,work,cost\n${rows.join('\n')}\n`;
}

function dateOf(text: string): LocalDate {
  const date = localDate(text);
  return must(date.ok ? date.value : null, 'date');
}
