import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems } from '../care/service-item.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';

const notUses = refusedBy('not-uses-of-a-tool');

/** A tool, and whether it is to hand: one's own, borrowed until a day, or missing. */
export const toolSchema = z.strictObject({
  id: idSchema,
  name: plainText(80),
  state: z.enum(['owned', 'borrowed', 'missing']),
  where: plainText(60).nullable(),
  /** Of a borrowed one: from whom, and until when; null: no day was named. */
  lender: plainText(80).nullable(),
  until: dateSchema.nullable(),
  note: longText(300),
  /** What was paid for it, and when; it is spread over so many uses. Left out: not said. */
  paidMinor: priceSchema.optional(),
  boughtOn: dateSchema.optional(),
  spreadOver: z.int(notUses).min(1, notUses).max(1000, notUses).optional(),
});
export type Tool = z.infer<typeof toolSchema>;

export const tools = family('tool', 'parts', toolSchema);
export const toolSet = factEntry('tool-set', tools, { car: () => null });
export const toolRemoved = factRemoval('tool-removed', tools);

/** The tools that a task takes; it has the service item's own id. */
export const taskToolsSchema = z.strictObject({ id: idSchema, car: idSchema, tools: z.array(idSchema).max(40) });
export type TaskTools = z.infer<typeof taskToolsSchema>;

export const taskTools = family('task-tools', 'parts', taskToolsSchema);
export const taskToolsSet = factEntry('task-tools-set', taskTools, { car: (task) => task.car, refersTo: (task) => [...refers(serviceItems, task.id), ...refers(tools, ...task.tools)] });
