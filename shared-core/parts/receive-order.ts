import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { findOrder } from './change-order.ts';
import { deliveredLineSchema, deliveries, deliveryRecorded, deliverySchema, type Delivery } from './delivery.ts';
import { lotSchema, lotSet, type Lot } from './lot.ts';
import { orderSchema } from './order.ts';
import type { StandingOrder } from './order-standing.ts';
import { parts } from './part.ts';
import { receivedLots } from './received-lots.ts';

const line = deliveredLineSchema.shape;

const receivedLineRequest = z.strictObject({
  line: line.line,
  packs: line.packs,
  found: line.found.default('good'),
  again: line.again.default(false),
  note: line.note.default(''),
  /** Of good ones: what is printed on them, where they are put, how long they keep once opened. */
  expires: lotSchema.shape.expires.default(null),
  where: lotSchema.shape.where.default(null),
  keepsOpenedDays: lotSchema.shape.keepsOpenedDays.default(null),
});
type ReceivedLine = z.infer<typeof receivedLineRequest>;

/**
 * Records what came of an order: good packs go to the shelf as lots with their share of what was paid; wrong, damaged and missing ones are
 * named, and whether others are to come for them. What has not come is still on the way.
 */
export const receiveOrder = change({
  request: z.strictObject({
    id: idSchema.optional(),
    order: idSchema,
    on: deliverySchema.shape.on.optional(),
    /** Null: everything that is still to come has come, and is good. */
    lines: z.array(receivedLineRequest).min(1).max(400).nullable().default(null),
    papers: deliverySchema.shape.papers.default([]),
    note: deliverySchema.shape.note.default(''),
  }),
  reply: z.object({ delivery: deliverySchema, lots: z.array(lotSchema), order: orderSchema }),
  decide: (facts, request, moment) => {
    const found = findOrder(facts, request.order);
    if (!found.ok) return found;
    const on = request.on ?? moment.today;
    const rows = request.lines ?? found.value.lines.filter((one) => one.open > 0).map((one) => receivedLineRequest.parse({ line: one.line.id, packs: one.open }));
    if (rows.length === 0) return refuse('order-nothing-open', {}, ['order']);
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (on < found.value.order.placedOn) return refuse('received-before-placed', { date: on, placed: found.value.order.placedOn }, ['on']);
    const sound = checkRows(facts, found.value, rows);
    if (!sound.ok) return sound;
    const delivery: Delivery = { id: request.id ?? moment.newId(), order: request.order, on, lines: rows.map(deliveredLine), papers: request.papers, note: request.note };
    if (facts.get(deliveries, delivery.id) !== null) return refuse('id-taken', { id: delivery.id }, ['id']);
    const came = rows.filter((row) => row.found === 'good').reduce<{ readonly lots: readonly Lot[]; readonly before: ReadonlyMap<string, number> }>(({ lots, before }, row) => {
      const standing = must(found.value.lines.find((one) => one.line.id === row.line), 'line');
      const earlier = before.get(row.line) ?? 0;
      const more = receivedLots(facts, found.value.order, { ...row, on, standing: { ...standing, good: standing.good + earlier } }, moment.newId);
      return { lots: [...lots, ...more], before: new Map(before).set(row.line, earlier + row.packs) };
    }, { lots: [], before: new Map() });
    return ok({ entries: [newEntry(deliveryRecorded, delivery), ...came.lots.map((lot) => newEntry(lotSet, lot))], reply: { delivery, lots: [...came.lots], order: found.value.order } });
  },
});

function deliveredLine({ line: of, packs, found, again, note }: ReceivedLine): Delivery['lines'][number] {
  return { line: of, packs, found, again: again && (found === 'wrong' || found === 'damaged'), note };
}

/** Every row names a line of the order, and no more comes of a line than is still to come. */
function checkRows(facts: Facts, { lines }: StandingOrder, rows: readonly ReceivedLine[]): Result<unknown> {
  for (const [at, row] of rows.entries()) {
    const standing = lines.find((one) => one.line.id === row.line);
    if (standing === undefined) return refuse('unknown-order-line', { line: row.line }, ['lines', at, 'line']);
    const all = rows.filter((one) => one.line === row.line).reduce((sum, one) => sum + one.packs, 0);
    if (all > standing.open) return refuse('more-than-ordered', { part: facts.get(parts, standing.line.part)?.name ?? standing.line.part, open: standing.open }, ['lines', at, 'packs']);
    if (row.found !== 'good' && (row.expires !== null || row.where !== null)) return refuse('only-good-is-kept', {}, ['lines', at]);
  }
  return ok(null);
}
