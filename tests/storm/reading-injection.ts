import { thinOut } from '../../shared-core/fleet/backtest-origins.ts';
import { clusterOrTypo } from '../../shared-core/fleet/cluster-or-typo.ts';
import { gateReading, judgeReading } from '../../shared-core/fleet/reading-judgement.ts';
import { suggestRepairs } from '../../shared-core/fleet/reading-repairs.ts';
import { evidenceOf, withReading } from '../../shared-core/fleet/usage-evidence.ts';
import { usageOf, type DayKm, type Usage } from '../../shared-core/fleet/usage-rate.ts';
import { makeSeason } from '../../shared-core/fleet/usage-season.ts';
import { must } from '../../shared-core/result/assert.ts';
import { diceOf } from '../shared-core/parts/order-seeds.ts';

type Dice = ReturnType<typeof diceOf>;

/** Slips of the hand put into clean logs. `wrong-digit` and `swap` are often harmless; the others never are. */
export const SLIPS = ['missing-digit', 'extra-digit', 'miles-for-km', 'km-for-miles', 'swap', 'wrong-digit'] as const;
export type Slip = (typeof SLIPS)[number];

/** How one kind of slip fared. `grave`: beyond 300 km and half the expected step. `looked`: caught at once or by the next, true reading. */
export interface SlipCount {
  readonly injected: number;
  readonly caught: number;
  readonly grave: number;
  readonly graveCaught: number;
  readonly graveLooked: number;
  readonly repairedFirst: number;
  readonly repairedInThree: number;
}

/** What became of doubtful readings at the next one. `unasked`: the replaced instrument's first value raised no doubt. */
export interface VerdictCount {
  readonly asked: number;
  readonly right: number;
  readonly wrong: number;
  readonly undecided: number;
  readonly unasked: number;
}

/** The whole bench at one density. */
export interface InjectionBench {
  readonly readings: number;
  readonly falsePositives: number;
  readonly slips: Readonly<Record<Slip, SlipCount>>;
  readonly replacedOrTypo: VerdictCount;
}

const season = makeSeason('north');
const KM_IN_MILE = 1.609344;
const LOW_START_KM = 2000;

/** A log as the bench takes it: thinned, whole km, 100 000 km added where it starts low, so that digits and units can be mixed up. */
export function benchLog(readings: readonly DayKm[], spacingDays: number): readonly DayKm[] {
  const added = must(readings[0], 'reading').km < LOW_START_KM ? 100_000 : 0;
  return thinOut(readings, spacingDays).map(({ day, km }) => ({ day, km: Math.round(km) + added }));
}

/** Injects each slip and each replaced instrument so many times after every reading from the third on. */
export function injectionBench(logs: readonly (readonly DayKm[])[], draws: number, seed: number): InjectionBench {
  const dice = diceOf(seed);
  const places = logs.flatMap(placesOf);
  const slips = Object.fromEntries(SLIPS.map((slip) => [slip, countSlips(places, slip, draws, dice)])) as Record<Slip, SlipCount>;
  return { ...cleanCount(logs), slips, replacedOrTypo: countVerdicts(places, draws, dice) };
}

/** A place in a clean log: what was known, the true reading, and the true one after it. */
interface Place {
  readonly usage: Usage;
  readonly known: readonly DayKm[];
  readonly truth: DayKm;
  readonly next: DayKm | null;
}

function placesOf(log: readonly DayKm[]): readonly Place[] {
  return log.slice(2).map((truth, at) => {
    const known = log.slice(0, at + 2);
    return { usage: usageOf(must(evidenceOf(known, season), 'evidence'), null, season), known, truth, next: log[at + 3] ?? null };
  });
}

/** Readings of clean logs that are set aside, each judged by those that were taken before it. */
function cleanCount(logs: readonly (readonly DayKm[])[]): Pick<InjectionBench, 'readings' | 'falsePositives'> {
  let falsePositives = 0;
  for (const log of logs) {
    let evidence = withReading(null, must(log[0], 'first'), season);
    for (const reading of log.slice(1)) {
      if (gateReading(usageOf(evidence, null, season), reading) === null) evidence = withReading(evidence, reading, season);
      else falsePositives += 1;
    }
  }
  return { readings: logs.flat().length - logs.length, falsePositives };
}

/** What is typed for a true value, in km, and in which unit it was typed; null where the slip changes nothing. */
function slipped(km: number, slip: Slip, dice: Dice): { readonly typed: number; readonly kmPerUnit: number; readonly true: number } | null {
  const inMiles = slip === 'km-for-miles';
  const true_ = inMiles ? Math.round(km / KM_IN_MILE) : km;
  const typed = typedFor(String(true_), slip, dice);
  return typed === true_ ? null : { typed, kmPerUnit: inMiles ? KM_IN_MILE : 1, true: true_ };
}

function typedFor(text: string, slip: Slip, dice: Dice): number {
  const at = dice.whole(0, text.length - 1);
  const digit = String(dice.whole(0, 9));
  switch (slip) {
    case 'missing-digit': return Number(text.slice(0, at) + text.slice(at + 1));
    case 'extra-digit': return Number(text.slice(0, at + 1) + digit + text.slice(at + 1));
    case 'miles-for-km': return Math.round(Number(text) / KM_IN_MILE);
    case 'km-for-miles': return Math.round(Number(text) * KM_IN_MILE);
    case 'swap': return at === 0 ? Number(text) : Number(text.slice(0, at - 1) + text.charAt(at) + text.charAt(at - 1) + text.slice(at + 1));
    case 'wrong-digit': return Number(text.slice(0, at) + digit + text.slice(at + 1));
  }
}

function countSlips(places: readonly Place[], slip: Slip, draws: number, dice: Dice): SlipCount {
  const count = { injected: 0, caught: 0, grave: 0, graveCaught: 0, graveLooked: 0, repairedFirst: 0, repairedInThree: 0 };
  for (const place of places) {
    for (let draw = 0; draw < draws; draw += 1) {
      const made = slipped(place.truth.km, slip, dice);
      if (made === null) continue;
      const reading = { day: place.truth.day, km: made.typed * made.kmPerUnit };
      const caught = gateReading(place.usage, reading) !== null;
      const shift = Math.abs(reading.km - place.truth.km);
      const grave = shift > Math.max(300, (place.truth.km - place.usage.lastKm) / 2);
      count.injected += 1;
      count.caught += caught ? 1 : 0;
      if (caught) repaired(count, place, made);
      if (!grave) continue;
      count.grave += 1;
      count.graveCaught += caught ? 1 : 0;
      count.graveLooked += caught || caughtByNext(place, reading) ? 1 : 0;
    }
  }
  return count;
}

function repaired(count: { repairedFirst: number; repairedInThree: number }, { usage, truth }: Place, made: { typed: number; kmPerUnit: number; true: number }): void {
  const offered = suggestRepairs({ usage, day: truth.day, value: made.typed, kmPerUnit: made.kmPerUnit, offsetKm: 0, atMostKm: null });
  const at = offered.findIndex(({ value }) => Math.abs(value - made.true) <= 1);
  count.repairedFirst += at === 0 ? 1 : 0;
  count.repairedInThree += at >= 0 ? 1 : 0;
}

/** The slip was taken; does the next, true reading bring it up? */
function caughtByNext({ known, next }: Place, slip: DayKm): boolean {
  if (next === null) return false;
  return judgeReading({ readings: [...known, slip], candidate: next, declaredKmAYear: null, season }).state === 'doubtful';
}

/** At every place: a new instrument near zero, a used one of 10 000 to 200 000 km, and two slips of the hand. */
function countVerdicts(places: readonly Place[], draws: number, dice: Dice): VerdictCount {
  const count = { asked: 0, right: 0, wrong: 0, undecided: 0, unasked: 0 };
  for (const place of places) {
    for (let draw = 0; draw < draws; draw += 1) {
      settle(count, place, dice.whole(0, 50), 'replaced');
      settle(count, place, dice.whole(10_000, 200_000), 'replaced');
      for (const slip of [dice.one(SLIPS), dice.one(SLIPS)]) {
        const made = slipped(place.truth.km, slip, dice);
        if (made !== null) settle(count, place, made.typed * made.kmPerUnit, 'typo');
      }
    }
  }
  return count;
}

function settle(count: { -readonly [Key in keyof VerdictCount]: number }, { usage, truth, next }: Place, km: number, came: 'replaced' | 'typo'): void {
  if (next === null) return;
  const doubtful = { day: truth.day, km };
  if (gateReading(usage, doubtful) === null) {
    count.unasked += came === 'replaced' ? 1 : 0;
    return;
  }
  const nextKm = came === 'replaced' ? km + (next.km - truth.km) : next.km;
  const { verdict } = clusterOrTypo(usage, doubtful, { day: next.day, km: nextKm });
  count.asked += 1;
  if (verdict === 'ask') count.undecided += 1;
  else if (verdict === came) count.right += 1;
  else count.wrong += 1;
}
