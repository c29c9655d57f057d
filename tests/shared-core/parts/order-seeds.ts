import type { OrderInstanceAsWritten } from '../../../shared-core/parts/order-instance.ts';
import { packLimits } from './order-brute-force.ts';

/** Random numbers from a seed: the same seed always gives the same instance. */
export interface Dice {
  /** A whole number from low to high. */
  whole(low: number, high: number): number;
  /** One of the values. */
  one<Value>(values: readonly Value[]): Value;
  /** True so many times in a hundred. */
  chance(percent: number): boolean;
}

/** Source: the 32-bit generator known as mulberry32, from memory. */
export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  return {
    whole,
    one: (values) => {
      const value = values[whole(0, values.length - 1)];
      if (value === undefined) throw new Error('nothing to choose from');
      return value;
    },
    chance: (percent) => next() * 100 < percent,
  };
}

/** At most so many ways to buy packs, so that all of them can be tried. */
const MOST_WAYS = 10_000;

type Written = OrderInstanceAsWritten;

/** A small order problem from a seed, with kits, breaks, thresholds, minima, mix, step, shelf, expiry, rank and later all about. */
export function smallOrder(seed: number): Written {
  const dice = diceOf(seed);
  const parts = someParts(dice);
  const singles = parts.filter((part) => part.contains?.length === 0).map((part) => part.id);
  const suppliers = Array.from({ length: dice.whole(1, 3) }, (_, i) => supplier(dice, i + 1));
  const needs = Array.from({ length: dice.whole(1, 4) }, (_, i) => need(dice, i + 1));
  const wanted = parts.filter((part) => part.contains?.length !== 0 || needs.some(({ spec }) => part.meets.includes(spec)));
  const offers = Array.from({ length: dice.whole(2, 6) }, (_, i) => offer(dice, i + 1, suppliers, wanted.length > 0 && dice.chance(80) ? wanted : parts));
  const shelf = Array.from({ length: dice.whole(0, 3) }, () => stock(dice, dice.chance(20) ? parts.map((part) => part.id) : singles));
  return fewWays({ suppliers, parts, offers, needs, shelf, orderOn: '2027-01-02' });
}

/** Specifications a and b are counted, c and d are poured. */
function someParts(dice: Dice): Written['parts'] {
  const single = (i: number, specs: readonly string[]) => ({ id: `p${i}`, meets: dice.chance(35) ? [...specs] : [dice.one(specs)], contains: [] });
  const counted = [1, 2, 3].slice(0, dice.whole(1, 3)).map((i) => single(i, ['a', 'b']));
  const poured = [4, 5].slice(0, dice.whole(1, 2)).map((i) => single(i, ['c', 'd']));
  const kit = () => ({ id: 'kit', meets: [], contains: [inside(dice.one(counted).id), inside(dice.one(poured).id)] });
  const inside = (part: string) => ({ part, quantity: dice.whole(1, 2) });
  return [...counted, ...poured, ...(dice.chance(60) ? [kit()] : [])];
}

function supplier(dice: Dice, i: number): Written['suppliers'][number] {
  return {
    id: `s${i}`,
    deliveryMinor: dice.one([0, 250, 495, 700, 990]),
    freeFromMinor: dice.chance(60) ? dice.whole(1200, 4000) : null,
    minimumMinor: dice.chance(40) ? dice.whole(500, 2500) : 0,
    leadDays: dice.chance(80) ? dice.whole(0, 3) : dice.whole(4, 9),
  };
}

function offer(dice: Dice, i: number, suppliers: Written['suppliers'], parts: Written['parts']): Written['offers'][number] {
  const part = dice.one(parts);
  const poured = part.id === 'p4' || part.id === 'p5';
  const priceMinor = dice.chance(5) ? 0 : dice.whole(300, 1800);
  const lower = (factor: number) => Math.round((priceMinor * factor) / 100);
  const breaks = [{ packs: dice.whole(2, 3), priceMinor: lower(dice.whole(60, 105)) }, { packs: dice.whole(4, 5), priceMinor: lower(dice.whole(40, 80)) }];
  return {
    id: `o${i}`,
    supplier: dice.one(suppliers).id,
    part: part.id,
    quantity: poured ? dice.one([0.5, 1, 1.5, 4, 5]) : dice.one([1, 1, 1, 2, 4]),
    priceMinor,
    most: dice.chance(35) ? dice.whole(0, 4) : null,
    breaks: dice.chance(40) ? breaks.slice(0, dice.whole(1, 2)) : [],
  };
}

function need(dice: Dice, i: number): Written['needs'][number] {
  const spec = dice.one(['a', 'b', 'c', 'd']);
  const poured = spec === 'c' || spec === 'd';
  return {
    id: `n${i}`,
    car: `c${dice.whole(1, 3)}`,
    spec,
    quantity: poured ? dice.one([0.5, 1, 2, 3.5, 4, 4.5]) : dice.whole(1, 4),
    neededBy: `2027-01-${String(dice.chance(85) ? dice.whole(6, 14) : dice.whole(1, 5)).padStart(2, '0')}`,
    ...(dice.chance(50) ? { mix: dice.chance(30) } : {}),
    ...(poured ? (dice.chance(20) ? { step: dice.one([0.5, 1, 1.5]) } : {}) : dice.chance(75) ? { step: dice.one([1, 1, 1, 2]) } : {}),
    ...(dice.chance(50) ? { rank: dice.one([0, 1, 2] as const) } : {}),
    ...(dice.chance(25) ? { laterMinor: dice.whole(0, 2500) } : {}),
  };
}

function stock(dice: Dice, parts: readonly string[]): Written['shelf'][number] {
  return {
    part: dice.one(parts),
    quantity: dice.one([0, 0.5, 1, 1, 2, 3]),
    expires: dice.chance(60) ? `2027-01-${String(dice.whole(1, 16)).padStart(2, '0')}` : null,
  };
}

/** Limits the offers with the most ways until all ways can be tried. */
function fewWays(instance: Written): Written {
  const limits = packLimits(instance);
  const ways = limits.reduce((product, limit) => product * (limit + 1), 1);
  if (ways <= MOST_WAYS) return instance;
  const largest = Math.max(...limits);
  const offers = instance.offers.map((each, at) => (limits[at] === largest ? { ...each, most: Math.min(largest - 1, 5) } : each));
  return fewWays({ ...instance, offers });
}
