import { localDate } from '../../../shared-core/calendar/local-date.ts';
import { readOrderInstance } from '../../../shared-core/parts/read-order-instance.ts';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import { solveOrder } from '../../../shared-core/parts/order-solve.ts';
import { verifyOrder } from '../../../shared-core/parts/order-verify.ts';
import { assert } from '../../../shared-core/result/assert.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { amountSaid } from '../../../shared-core/views/amount-said.ts';
import { csvText } from '../../../shared-core/views/csv-text.ts';
import type { OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { workerSolver } from '../../solver/worker-solver.ts';
import { done, refused, wrongUse, type Command, type CommandAnswer } from '../command.ts';
import { readJson } from '../read-input.ts';

/** Merges needs into orders: of the household, or of a bare instance. */
export const orderCommand: Command = {
  name: 'order',
  does: 'merges the needs of all cars into the cheapest orders',
  usage: ['order [--horizon DAYS] [--supplier ID] [--by DATE] [--no-leftovers] [--no-wishes] [--sheet csv|mail|counter]', 'order --instance FILE.json'],
  options: { instance: { type: 'string' }, horizon: { type: 'string' }, supplier: { type: 'string' }, by: { type: 'string' }, 'no-leftovers': { type: 'boolean' }, 'no-wishes': { type: 'boolean' }, sheet: { type: 'string' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('order takes no further words.');
    if (typeof input.options['instance'] === 'string') return orderInstance(input.options['instance']);
    const horizon = input.options['horizon'] === undefined ? undefined : Number(input.options['horizon']);
    if (horizon !== undefined && !Number.isInteger(horizon)) return wrongUse('--horizon is a whole number of days.');
    const sheet = input.options['sheet'];
    if (sheet !== undefined && !isSheetKind(sheet)) return wrongUse('--sheet is csv, mail or counter.');
    const by = input.options['by'] === undefined ? null : localDate(String(input.options['by']));
    if (by !== null && !by.ok) return wrongUse('--by is a date: YYYY-MM-DD.');
    const reply = await (await input.host()).call('order.propose', {
      ...(horizon === undefined ? {} : { horizonDays: horizon }),
      onlySupplier: typeof input.options['supplier'] === 'string' ? input.options['supplier'] : null,
      arriveBy: by === null ? null : by.value,
      noLeftovers: input.options['no-leftovers'] === true,
      wishes: input.options['no-wishes'] !== true,
    });
    return reply.ok ? done(reply.value, sheet === undefined ? orderText(reply.value) : sheetText(reply.value, sheet)) : refused(reply.refusal);
  },
};

type SheetKind = 'csv' | 'mail' | 'counter';

function isSheetKind(value: unknown): value is SheetKind {
  return value === 'csv' || value === 'mail' || value === 'counter';
}

function sheetText({ sheets }: OrderView, kind: SheetKind): string {
  return kind === 'csv' ? ordersCsv(sheets).trimEnd() : sheets.map((sheet) => sheet[kind]).join('\n\n');
}

/** The sheets of all suppliers as one table. */
function ordersCsv(sheets: OrderView['sheets']): string {
  return csvText([...(sheets[0] === undefined ? [] : [sheets[0].table.head]), ...sheets.flatMap((sheet) => sheet.table.rows)]);
}

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
  const wishes = view.wishes.map((one) => `  wish of ${one.carName}: ${one.name}. ${one.why.text}`);
  if (view.needs.length === 0) return [`Nothing that falls due within ${view.horizonDays} days needs a part.`, ...wishes].join('\n');
  const total = `To buy for the next ${view.horizonDays} days: ${money(view.totalMinor)} (goods ${money(view.goodsMinor)}, delivery ${money(view.deliveryMinor)})${view.depositsMinor === 0 ? '' : `, and ${money(view.depositsMinor)} in deposits that come back`}.`;
  return [
    // The sum with its goods and delivery says more than the proof's own sentence of it.
    ...view.proof.map((one) => (one.code === 'order-total' ? total : one.text)),
    ...view.orders.flatMap((order) => [
      `${order.supplierName}: ${money(order.goodsMinor + order.deliveryMinor)}, here in ${order.leadDays} days`,
      ...order.lines.map((line) => `  ${line.packs} x ${line.partName}${line.number === null ? '' : ` (${line.number})`}, ${money(line.totalMinor)}${line.stale ? `, price of ${sayDate(line.seenOn)}` : ''}: ${forWhom(line)}`),
    ]),
    ...view.needs.map((need) => `  ${need.state === 'met' ? 'for' : need.state === 'later' ? 'later' : 'NOT MET'} ${need.carName}: ${need.itemName}, ${neededSaid(need)} by ${sayDate(need.neededBy)}`),
    ...view.shares.map((share) => `  ${share.carName ?? 'The shelf'} bears ${money(share.minor)}`),
    ...wishes,
    ...view.notes.map((note) => note.text),
  ].join('\n');
}

/** @example neededSaid(need) //=> '4.3 litres of engine oil', or '1 oil filter' */
function neededSaid({ quantity, unit, specificationName }: OrderView['needs'][number]): string {
  return unit === 'each' ? `${quantity} ${specificationName}` : `${amountSaid(quantity, unit)} of ${specificationName}`;
}

function forWhom(line: OrderView['orders'][number]['lines'][number]): string {
  const cars = [...new Set(line.for.map((one) => one.carName))];
  return cars.length === 0 ? 'the shelf' : cars.join(', ');
}
