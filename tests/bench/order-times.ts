import { directSolver } from '../../electron/solver/highs-instance.ts';
import { solveOrder } from '../../shared-core/parts/order-solve.ts';
import { readOrderInstance } from '../../shared-core/parts/read-order-instance.ts';
import { LARGE, largeOrder } from './large-order.ts';
import { referenceMilliseconds } from './reference.ts';

/**
 * How long orders at the far end of what a household could ask take: `node tests/bench/order-times.ts [first seed] [last seed]`. Prints seconds
 * and how many times the reference of the same run they are; it judges nothing.
 */
const [first = 1, last = 6] = process.argv.slice(2).map(Number);
const reference = referenceMilliseconds() / 1000;
console.log(`${LARGE.cars} cars, ${LARGE.needs} needs, ${LARGE.suppliers} suppliers, ${LARGE.offers} offers; the reference takes ${reference.toFixed(2)} s of the processor`);

for (let seed = first; seed <= last; seed += 1) {
  const read = readOrderInstance(largeOrder(seed));
  if (!read.ok) throw new Error(`seed ${seed} was refused: ${read.refusal.code}`);
  const [started, used] = [performance.now(), process.cpuUsage()];
  const order = await solveOrder(read.value, directSolver(), { timeLimitSeconds: 120 });
  const { user } = process.cpuUsage(used);
  const seconds = `${((performance.now() - started) / 1000).toFixed(1)} s (${(user / 1e6).toFixed(1)} s of the processor, ${(user / 1e6 / reference).toFixed(1)} times the reference)`;
  if (!order.ok) console.log(`seed ${seed}: ${order.refusal.code} after ${seconds}`);
  else console.log(`seed ${seed}: ${order.value.status} ${order.value.totalMinor}, bound ${order.value.boundMinor}, ${order.value.lines.length} lines, ${seconds}`);
}
