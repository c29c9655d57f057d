import { z } from 'zod';
import { change } from '../journal/operation.ts';
import { plainText } from '../result/plain-text.ts';
import { intervalSchema } from './limit.ts';
import { serviceItemSchema } from './service-item.ts';
import { changeItem } from './set-item.ts';

/** Confirms an item's interval by its source, with the interval as it stands there where it differs. */
export const confirmItem = change({
  request: z.strictObject({
    item: serviceItemSchema.shape.id,
    /** The handbook page or maker's sheet that says so. */
    source: plainText(120),
    interval: intervalSchema.optional(),
  }),
  reply: z.object({ item: serviceItemSchema }),
  decide: (facts, { item, source, interval }, moment) => changeItem.decide(facts, { id: item, source, confirmed: true, ...(interval === undefined ? {} : { interval }) }, moment),
});
