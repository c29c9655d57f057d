import glpkPackage, { type GLPK, type LP } from 'glpk.js/node';
import type { OrderInstanceAsWritten } from '../../../shared-core/parts/order-instance.ts';

type Written = OrderInstanceAsWritten;
type WrittenNeed = Written['needs'][number];
type Row = LP['subjectTo'][number];
type Term = readonly [string, number];

const glpk: GLPK = await glpkPackage();

/** The best there is: needs met, or left for later, of ranks 0, 1 and 2, and the least cost of doing so. */
export interface SecondBest {
  readonly settled: readonly [number, number, number];
  readonly totalMinor: number;
}

/**
 * Solves an order by another program and another solver. Every number of packs of every offer is a choice of its own, with its exact price;
 * every supplier is in one of three states: unused, used and paid for, used and free. Every need takes from every lot and every offer by
 * itself. How many can be met is asked rank by rank, then the least cost.
 *
 * Source: GLPK (package glpk.js) as the second solver; the rules of a bare order as the headless commands state them. It throws where GLPK
 * does not prove its answer.
 */
export function secondSolverOrder(instance: Written): SecondBest {
  const program = new SecondProgram();
  const bought = instance.offers.map((offer) => addOffer(program, instance, offer));
  for (const supplier of instance.suppliers) addSupplier(program, supplier, bought.filter((one) => one.offer.supplier === supplier.id));
  const piles = pilesOf(instance, bought);
  const needs = instance.needs.map((need) => addNeed(program, instance, need, piles));
  for (const pile of piles) program.row([...pile.taken.map((taken): Term => [taken, 1]), ...pile.packs.map((packs): Term => [packs.name, -pile.each * packs.count])], null, pile.there);
  const settled = ([0, 1, 2] as const).map((rank) => {
    const counted = needs.filter(({ need }) => (need.rank ?? 1) === rank).flatMap(({ met, later }) => (later === null ? [met] : [met, later]));
    if (counted.length === 0) return 0;
    const most = 0 - program.least(counted.map((name) => [name, -1]));
    program.row(counted.map((name) => [name, 1]), most, null);
    return most;
  });
  return { settled: [settled[0] ?? 0, settled[1] ?? 0, settled[2] ?? 0], totalMinor: program.least(program.costs) };
}

/** One choice: just so many packs of an offer. */
interface PackCount {
  readonly name: string;
  readonly count: number;
  readonly goodsMinor: number;
}

interface Bought {
  readonly offer: Written['offers'][number];
  readonly counts: readonly PackCount[];
}

function addOffer(program: SecondProgram, instance: Written, offer: Written['offers'][number]): Bought {
  const counts = Array.from({ length: mostPacks(instance, offer) }, (_, at): PackCount => {
    const count = at + 1;
    const reached = (offer.breaks ?? []).filter(({ packs }) => packs <= count).sort((a, b) => a.packs - b.packs).at(-1);
    const goodsMinor = count * (reached?.priceMinor ?? offer.priceMinor);
    return { name: program.binary(goodsMinor), count, goodsMinor };
  });
  program.row(counts.map(({ name }) => [name, 1]), null, 1);
  return { offer, counts };
}

/** Enough to cover all needs by itself, and to reach whatever sum or break there is on top. */
function mostPacks({ suppliers, parts, needs }: Written, { supplier, part, quantity, most, priceMinor, breaks = [] }: Written['offers'][number]): number {
  const held = contentsOf(parts, part, quantity);
  const covers = [...held].map(([single, each]) => {
    const meets = parts.find(({ id }) => id === single)?.meets ?? [];
    return needs.filter(({ spec }) => meets.includes(spec)).reduce((sum, need) => sum + need.quantity, 0) / each;
  });
  const terms = suppliers.find(({ id }) => id === supplier);
  const sum = Math.max(terms?.freeFromMinor ?? 0, terms?.minimumMinor ?? 0);
  const lowest = Math.min(priceMinor, ...breaks.map((step) => step.priceMinor));
  const packs = Math.ceil(Math.max(...covers) - 1e-9) + (lowest > 0 ? Math.ceil(sum / lowest) : 0) + Math.max(0, ...breaks.map((step) => step.packs));
  return Math.min(most ?? Infinity, packs);
}

function addSupplier(program: SecondProgram, { deliveryMinor, freeFromMinor = null, minimumMinor = 0 }: Written['suppliers'][number], bought: readonly Bought[]): void {
  const [unused, paid] = [program.binary(0), program.binary(deliveryMinor)];
  const free = freeFromMinor === null ? null : program.binary(0);
  program.row([[unused, 1], [paid, 1], ...(free === null ? [] : [[free, 1] as const])], 1, 1);
  for (const { counts } of bought) program.row([[unused, 1], ...counts.map(({ name }): Term => [name, 1])], null, 1);
  const goods = bought.flatMap(({ counts }) => counts.map(({ name, goodsMinor }): Term => [name, goodsMinor]));
  program.row([...goods, [paid, -minimumMinor], ...(free === null ? [] : [[free, -Math.max(minimumMinor, freeFromMinor ?? 0)] as const])], 0, null);
}

/** Something to take from: one lot, or what the packs of one offer hold of one part. */
interface Pile {
  readonly part: string;
  readonly source: string;
  readonly comes: string;
  readonly goes: string;
  readonly there: number;
  readonly each: number;
  readonly packs: readonly PackCount[];
  readonly taken: string[];
}

function pilesOf({ parts, suppliers, shelf, orderOn }: Written, bought: readonly Bought[]): readonly Pile[] {
  const lots = shelf.flatMap(({ part, quantity, expires }) => [...contentsOf(parts, part, quantity)].map(([single, there]): Pile => ({ part: single, source: 'shelf', comes: '', goes: expires ?? '9', there, each: 0, packs: [], taken: [] })));
  const packs = bought.flatMap(({ offer, counts }) => {
    const lead = suppliers.find(({ id }) => id === offer.supplier)?.leadDays ?? 0;
    const comes = new Date(Date.parse(orderOn) + lead * 86_400_000).toISOString().slice(0, 10);
    return [...contentsOf(parts, offer.part, offer.quantity)].map(([single, each]): Pile => ({ part: single, source: offer.id, comes, goes: '9', there: 0, each, packs: counts, taken: [] }));
  });
  return [...lots, ...packs];
}

function contentsOf(parts: Written['parts'], id: string, quantity: number): ReadonlyMap<string, number> {
  const contains = parts.find((part) => part.id === id)?.contains ?? [];
  const found = new Map<string, number>(contains.length === 0 ? [[id, quantity]] : []);
  for (const inner of contains) found.set(inner.part, (found.get(inner.part) ?? 0) + inner.quantity * quantity);
  return found;
}

interface AddedNeed {
  readonly need: WrittenNeed;
  readonly met: string;
  readonly later: string | null;
}

function addNeed(program: SecondProgram, { parts }: Written, need: WrittenNeed, piles: readonly Pile[]): AddedNeed {
  const met = program.binary(0);
  const later = need.laterMinor === undefined || need.laterMinor === null ? null : program.binary(need.laterMinor);
  if (later !== null) program.row([[met, 1], [later, 1]], null, 1);
  const usable = piles.filter(({ part, comes, goes }) => comes <= need.neededBy && goes >= (need.usedOn ?? need.neededBy) && parts.some(({ id, meets }) => id === part && meets.includes(need.spec)));
  const all = usable.map((pile) => {
    const name = program.amount(need.quantity);
    pile.taken.push(name);
    program.row([[name, 1], [met, -need.quantity]], null, 0);
    return { pile, name };
  });
  program.row([...all.map(({ name }): Term => [name, 1]), [met, -need.quantity]], 0, 0);
  if (need.mix === false) {
    const chosen = [...new Set(all.map(({ pile }) => pile.part))].map((part) => ({ part, name: program.binary(0) }));
    program.row(chosen.map(({ name }) => [name, 1]), null, 1);
    for (const { pile, name } of all) program.row([[name, 1], [chosen.find(({ part }) => part === pile.part)?.name ?? '', -need.quantity]], null, 0);
  }
  if (need.step !== undefined && need.step !== null) {
    for (const key of new Set(all.map(({ pile }) => `${pile.source} ${pile.part}`))) {
      const same = all.filter(({ pile }) => `${pile.source} ${pile.part}` === key);
      program.row([...same.map(({ name }): Term => [name, 1]), [program.whole(Math.floor(need.quantity / need.step + 1e-9)), -need.step]], 0, 0);
    }
  }
  return { need, met, later };
}

/** A program in GLPK's form. */
class SecondProgram {
  readonly costs: Term[] = [];
  private readonly binaries: string[] = [];
  private readonly generals: string[] = [];
  private readonly bounds: { name: string; type: number; lb: number; ub: number }[] = [];
  private readonly rows: Row[] = [];
  private count = 0;

  binary(cost: number): string {
    const name = this.variable();
    this.binaries.push(name);
    if (cost > 0) this.costs.push([name, cost]);
    return name;
  }

  amount(most: number): string {
    const name = this.variable();
    this.bounds.push({ name, type: glpk.GLP_DB, lb: 0, ub: most });
    return name;
  }

  whole(most: number): string {
    const name = this.variable();
    this.generals.push(name);
    this.bounds.push(most > 0 ? { name, type: glpk.GLP_DB, lb: 0, ub: most } : { name, type: glpk.GLP_FX, lb: 0, ub: 0 });
    return name;
  }

  private variable(): string {
    this.count += 1;
    return `x${this.count}`;
  }

  row(terms: readonly Term[], lower: number | null, upper: number | null): void {
    const vars = terms.filter(([, coef]) => coef !== 0).map(([name, coef]) => ({ name, coef }));
    if (vars.length === 0) return;
    const type = lower === null ? glpk.GLP_UP : upper === null ? glpk.GLP_LO : lower === upper ? glpk.GLP_FX : glpk.GLP_DB;
    this.rows.push({ name: `r${this.rows.length}`, vars, bnds: { type, lb: lower ?? 0, ub: upper ?? 0 } });
  }

  /** The least that some costs come to. */
  least(costs: readonly Term[]): number {
    if (costs.length === 0) return 0;
    const vars = costs.map(([name, coef]) => ({ name, coef }));
    const lp: LP = { name: 'order', objective: { direction: glpk.GLP_MIN, name: 'cost', vars }, subjectTo: this.rows, bounds: this.bounds, binaries: this.binaries, generals: this.generals };
    const { status, z } = glpk.solve(lp, { msglev: glpk.GLP_MSG_OFF, presol: true, mipgap: 0, tmlim: 300 }).result;
    if (status !== glpk.GLP_OPT) throw new Error(`GLPK ended with status ${status}`);
    return Math.round(z);
  }
}
