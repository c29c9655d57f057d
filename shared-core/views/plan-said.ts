import { z } from 'zod';
import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';

/** Something said, by its key and as a sentence. */
export const saidSchema = z.object({ code: z.string(), values: z.record(z.string(), z.union([z.string(), z.number(), z.null()])), text: z.string() });
export type Said = z.infer<typeof saidSchema>;

/** A message with its sentence. */
export function said(message: Message): Said {
  return { code: message.key, values: { ...message.values }, text: say(message) };
}
