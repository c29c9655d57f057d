import { z } from 'zod';

/** What the host tells its windows without being asked. */
export const pushSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('changed'), stages: z.array(z.string()), cars: z.array(z.string()) }),
  z.object({ kind: z.literal('job-progress'), job: z.string(), done: z.number(), total: z.number().nullable() }),
  z.object({ kind: z.literal('job-ended'), job: z.string(), ok: z.boolean() }),
]);
export type Push = z.infer<typeof pushSchema>;
