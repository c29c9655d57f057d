import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { findLot } from '../parts/open-lot.ts';
import { countedLotSchema, stocktakeSchema, stockTaken, type Stocktake } from '../parts/stocktake.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { leftOfLots } from './shelf-left.ts';

/** Writes down what was counted; from now on that is what is left, and the difference from the books is named. */
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
    const left = leftOfLots(facts);
    for (const [at, line] of request.lines.entries()) {
      const lot = findLot(facts, line.lot);
      if (!lot.ok) return refuse(lot.refusal.code, lot.refusal.values, ['lines', at, 'lot']);
      if (request.lines.findIndex((other) => other.lot === line.lot) < at) return refuse('counted-twice', { lot: line.lot }, ['lines', at, 'lot']);
    }
    const lines = request.lines.map((line) => ({ ...line, difference: (Math.round(line.counted * 1000) - Math.round((left.get(line.lot) ?? 0) * 1000)) / 1000 + 0 }));
    const stocktake: Stocktake = { id: request.id ?? moment.newId(), on, where: request.where, lines, note: request.note };
    return ok({ entries: [newEntry(stockTaken, stocktake)], reply: { stocktake } });
  },
});
