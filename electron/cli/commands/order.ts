import { readOrderInstance } from '../../../shared-core/parts/read-order-instance.ts';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import { solveOrder } from '../../../shared-core/parts/order-solve.ts';
import { verifyOrder } from '../../../shared-core/parts/order-verify.ts';
import { assert } from '../../../shared-core/result/assert.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { OrderView } from '../../../shared-core/views/order-view.ts';
import { workerSolver } from '../../solver/worker-solver.ts';
import { done, refused, wrongUse, type Command, type CommandAnswer } from '../command.ts';
import { readJson } from '../read-input.ts';

/** Merges needs into orders: of the household, or of a bare instance. */
export const orderCommand: Command = {
  name: 'order',
  does: 'merges the needs of all cars into the cheapest orders',
  usage: ['order [--horizon DAYS]', 'order --instance FILE.json'],
  options: { instance: { type: 'string' }, horizon: { type: 'string' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('order takes no further words.');
    if (typeof input.options['instance'] === 'string') return orderInstance(input.options['instance']);
    const horizon = input.options['horizon'] === undefined ? undefined : Number(input.options['horizon']);
    if (horizon !== undefined && !Number.isInteger(horizon)) return wrongUse('--horizon is a whole number of days.');
    const reply = await (await input.host()).call('order.propose', horizon === undefined ? {} : { horizonDays: horizon });
    return reply.ok ? done(reply.value, orderText(reply.value)) : refused(reply.refusal);
  },
};

async function orderInstance(file: string): Promise<CommandAnswer> {
  const read = readJson(file);
  if (!read.ok) return refused(read.refusal);
  const instance = readOrderInstance(read.value);
  if (!instance.ok) return refused(instance.refusal);
  const solver = workerSolver();
  try {
    const answer = await solveOrder(instance.value, solver);
    if (!answer.ok) return refused(answer.refusal);
    const faults = verifyOrder(instance.value, answer.value);
    assert(faults.length === 0, `an order that its verifier refuses: ${JSON.stringify(faults[0])}`);
    return done(answer.value, instanceText(answer.value));
  } finally {
    await solver.close();
  }
}

function instanceText(answer: OrderAnswer): string {
  return [
    `${answer.status}: ${answer.totalMinor} in minor units (goods ${answer.goodsMinor}, delivery ${answer.deliveryMinor}, later ${answer.laterMinor}; nothing cheaper than ${answer.boundMinor})`,
    ...answer.lines.map((line) => `  ${line.packs} x ${line.offer}`),
    ...answer.unmet.map((one) => `  not met: ${one.need} (${one.code})`),
  ].join('\n');
}

function orderText(view: OrderView): string {
  const money = (minor: number) => `${amountText(minor, view.currency)} ${view.currency}`;
  if (view.needs.length === 0) return `Nothing that falls due within ${view.horizonDays} days needs a part.`;
  const proof = view.status === 'optimal' ? 'Nothing cheaper meets the same needs: it is proven.' : `The best found; nothing is cheaper than ${money(view.boundMinor)}.`;
  return [
    `To buy for the next ${view.horizonDays} days: ${money(view.totalMinor)} (goods ${money(view.goodsMinor)}, delivery ${money(view.deliveryMinor)}). ${proof}`,
    ...view.orders.flatMap((order) => [
      `${order.supplierName}: ${money(order.goodsMinor + order.deliveryMinor)}, here in ${order.leadDays} days`,
      ...order.lines.map((line) => `  ${line.packs} x ${line.partName}${line.number === null ? '' : ` (${line.number})`}, ${money(line.totalMinor)}`),
    ]),
    ...view.needs.map((need) => `  ${need.state === 'met' ? 'for' : need.state === 'later' ? 'later' : 'NOT MET'} ${need.carName}: ${need.itemName}, ${need.quantity} ${need.unit} of ${need.specificationName} by ${sayDate(need.neededBy)}`),
    view.savedMinor === null ? 'Each car alone would not meet the same needs, so nothing is said of a saving.' : `Each car alone: ${money(view.perCar.totalMinor)}; together saves ${money(view.savedMinor)}.`,
  ].join('\n');
}
