import { z } from 'zod';
import { ask } from '../../journal/operation.ts';
import { imports, importSchema } from '../../records/import.ts';
import { must } from '../../result/assert.ts';
import { ok } from '../../result/result.ts';

/** The imports that stand, the latest first; one that was withdrawn is not among them. */
export const listImports = ask({
  request: z.strictObject({}),
  reply: z.object({ imports: z.array(importSchema.extend({ enteredAt: z.string() })) }),
  answer: (facts) => {
    const stamps = facts.stamps(imports, null);
    const standing = facts.all(imports).map((one) => ({ one, stamp: must(stamps.get(one.id), 'stamp of an import') }));
    return ok({ imports: standing.sort((a, b) => b.stamp.seq - a.stamp.seq).map(({ one, stamp }) => ({ ...one, enteredAt: stamp.at })) });
  },
});
