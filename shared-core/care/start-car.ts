import { z } from 'zod';
import { addCar } from '../fleet/add-car.ts';
import { carSchema, powerSchema, type Car } from '../fleet/car.ts';
import { decideReading, recordReadingRequest } from '../fleet/record-reading.ts';
import { recordReadingReply, type RecordReadingReply } from '../fleet/recorded-reading.ts';
import { withEntries } from '../fleet/release-readings.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { parseRequest } from '../result/parse-request.ts';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { setChoice, startedItems, startItems } from './start-items.ts';
import { startingSetKeySchema, suggestedSet } from './starting-set.ts';

const reading = recordReadingRequest.shape;

const startCarRequest = z.strictObject({
  ...addCar.request.shape,
  /** What drives it; unless given, what the set is for. */
  power: powerSchema.optional(),
  /** What its odometer shows; null: not read yet. */
  reading: z.strictObject({ value: reading.value, unit: reading.unit, date: reading.date, source: reading.source }).nullable().default(null),
  /** The set its schedule starts from: by its key, or the one that fits it, where one does; null: it starts empty. */
  set: z.enum([...startingSetKeySchema.options, 'fitting'], refusedBy('unknown-set')).nullable().default(null),
  ...setChoice,
});
type StartCarRequest = z.infer<typeof startCarRequest>;

const NO_ITEMS: z.infer<typeof startedItems> = { items: [], kept: [], past: [] };

/**
 * Adds a car with its first reading and the items its schedule starts from, all or nothing, so that it is undone in one step.
 * A refusal of the reading names its field below `reading`.
 */
export const startCar = change({
  request: startCarRequest,
  reply: z.object({ car: carSchema, reading: recordReadingReply.nullable(), ...startedItems.shape }),
  decide: (facts, request, moment) => {
    const { reading: read, set, omit, history, printedDates, ...described } = request;
    const fits = checkPower(described.power, set);
    if (!fits.ok) return fits;
    const added = addCar.decide(facts, { ...described, power: described.power ?? powerOf(set) }, moment);
    if (!added.ok) return added;
    const { car } = added.value.reply;
    const first = firstReading(withEntries(facts, added.value.entries), car, read, moment);
    if (!first.ok) return first;
    const entries = [...added.value.entries, ...first.value.entries];
    const started = itemsOf(withEntries(facts, entries), car, set, { omit, history, printedDates }, moment);
    if (!started.ok) return started;
    return ok({ entries: [...entries, ...started.value.entries], reply: { car, reading: first.value.reply, ...started.value.reply } });
  },
});

/** A set that bears the name of what drives a car is not for one that is driven by the like of another set. */
function checkPower(power: Car['power'] | undefined, set: StartCarRequest['set']): Result<null> {
  const named = powerSchema.safeParse(set);
  if (power === undefined || power === 'other' || !named.success || named.data === power) return ok(null);
  return refuse('set-for-other-power', { set: named.data, power }, ['set']);
}

/** A set that bears the name of what drives a car is for such a car; the others fit whatever does. */
function powerOf(set: StartCarRequest['set']): Car['power'] {
  const named = powerSchema.safeParse(set);
  return named.success ? named.data : 'petrol';
}

interface FirstReading {
  readonly entries: readonly NewEntry[];
  readonly reply: RecordReadingReply | null;
}

function firstReading(facts: Facts, car: Car, read: StartCarRequest['reading'], moment: Moment): Result<FirstReading> {
  if (read === null) return ok({ entries: [], reply: null });
  const asked = parseRequest(recordReadingRequest, { ...read, car: car.id });
  const decided = asked.ok ? decideReading(facts, car, asked.value, moment) : asked;
  if (decided.ok) return decided;
  return { ok: false, refusal: { ...decided.refusal, path: ['reading', ...(decided.refusal.path ?? [])] } };
}

function itemsOf(facts: Facts, car: Car, asked: StartCarRequest['set'], choice: Pick<StartCarRequest, 'omit' | 'history' | 'printedDates'>, moment: Moment) {
  const set = asked === 'fitting' ? suggestedSet(car) : asked;
  return set === null ? ok({ entries: [], reply: NO_ITEMS }) : startItems.decide(facts, { ...choice, car: car.id, set }, moment);
}
