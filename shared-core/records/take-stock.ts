import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { findLot } from '../parts/open-lot.ts';
import { countedLotSchema, stocktakeSchema, stockTaken, type Stocktake } from '../parts/stocktake.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { lotMovements, sum, thousandths } from './lot-movements.ts';
import { leftOfLots } from './shelf-left.ts';
import { workRecords } from './work-record.ts';

/** Writes down what was counted: from that day on it is what is left, and the difference from what the books had on it is named. */
export const takeStock = change({
  request: z.strictObject({
    id: idSchema.optional(),
    on: stocktakeSchema.shape.on.optional(),
    where: stocktakeSchema.shape.where.default(null),
    lines: z.array(z.strictObject({ lot: idSchema, counted: countedLotSchema.shape.counted, note: countedLotSchema.shape.note.default('') })).min(1).max(2000),
    note: stocktakeSchema.shape.note.default(''),
  }),
  reply: z.object({ stocktake: stocktakeSchema }),
  decide: (facts, request, moment) => {
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    for (const [at, line] of request.lines.entries()) {
      const lot = findLot(facts, line.lot);
      if (!lot.ok) return refuse(lot.refusal.code, lot.refusal.values, ['lines', at, 'lot']);
      if (on < lot.value.receivedOn) return refuse('before-received', { date: on, received: lot.value.receivedOn }, ['on']);
      if (request.lines.findIndex((other) => other.lot === line.lot) < at) return refuse('counted-twice', { lot: line.lot }, ['lines', at, 'lot']);
    }
    const stocktake: Stocktake = { id: request.id ?? moment.newId(), on, where: request.where, lines: countedLines(facts, on, request.lines), note: request.note };
    return ok({ entries: [newEntry(stockTaken, stocktake)], reply: { stocktake } });
  },
});

function countedLines(facts: Facts, on: LocalDate, lines: readonly { readonly lot: string; readonly counted: number; readonly note: string }[]): Stocktake['lines'] {
  const left = leftOfLots(facts, on);
  const moved = lotMovements(facts, facts.all(workRecords));
  return lines.map((line) => {
    const { uses, counts } = moved.get(line.lot) ?? { uses: [], counts: [] };
    const difference = (thousandths(line.counted) - thousandths(left.get(line.lot) ?? 0)) / 1000 + 0;
    const sameDay = { used: sum(uses.filter((use) => use.on === on)) / 1000, counts: counts.filter((count) => count.on === on).length };
    return { ...line, difference, sameDay };
  });
}
