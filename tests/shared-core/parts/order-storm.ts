import type { Solver } from '../../../shared-core/integer-program/solver.ts';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import type { OrderInstance } from '../../../shared-core/parts/order-instance.ts';
import { solveOrder } from '../../../shared-core/parts/order-solve.ts';
import { verifyOrder } from '../../../shared-core/parts/order-verify.ts';
import { readOrderInstance } from '../../../shared-core/parts/read-order-instance.ts';
import { bruteForce, type BruteBest } from './order-brute-force.ts';
import { smallOrder } from './order-seeds.ts';

/** How a seeded order came out: what the program found, what trying everything found, and what the verifier says. */
export interface StormOutcome {
  readonly seed: number;
  readonly instance: OrderInstance;
  readonly answer: OrderAnswer;
  readonly found: BruteBest;
  readonly brute: BruteBest;
  readonly faults: ReturnType<typeof verifyOrder>;
}

/** Solves the order of a seed both ways; any number of seeds can be run. */
export async function stormOne(seed: number, solver: Solver): Promise<StormOutcome> {
  const written = smallOrder(seed);
  const read = readOrderInstance(written);
  if (!read.ok) throw new Error(`seed ${seed}: ${JSON.stringify(read.refusal)}`);
  const solved = await solveOrder(read.value, solver);
  if (!solved.ok) throw new Error(`seed ${seed}: ${JSON.stringify(solved.refusal)}`);
  const answer = solved.value;
  const found = { settled: settledOf(read.value, answer), totalMinor: answer.totalMinor };
  return { seed, instance: read.value, answer, found, brute: bruteForce(written), faults: verifyOrder(read.value, answer) };
}

function settledOf(instance: OrderInstance, answer: OrderAnswer): BruteBest['settled'] {
  const unmet = new Set(answer.unmet.map(({ need }) => need));
  const of = (rank: number) => instance.needs.filter((need) => need.rank === rank && !unmet.has(need.id)).length;
  return [of(0), of(1), of(2)];
}
