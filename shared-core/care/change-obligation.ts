import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse } from '../result/result.ts';
import { obligations, obligationSchema, obligationSet } from './obligation.ts';

/** Changes an obligation: only the fields given, its last valid day and its term among them. */
export const changeObligation = change({
  request: z.strictObject({ ...obligationSchema.omit({ car: true }).partial().shape, id: obligationSchema.shape.id }),
  reply: z.object({ obligation: obligationSchema }),
  decide: (facts, request) => {
    const now = facts.get(obligations, request.id);
    if (now === null) return refuse('unknown-obligation', { obligation: request.id }, ['id']);
    const obligation = obligationSchema.parse({ ...now, ...request });
    return ok({ entries: [newEntry(obligationSet, obligation)], reply: { obligation } });
  },
});
