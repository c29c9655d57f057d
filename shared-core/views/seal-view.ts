import { z } from 'zod';
import { sayOf } from '../result/words/say.ts';

/** A seal that was given: over how many entries, when, and its text. */
export const givenSealSchema = z.object({
  entries: z.int(),
  root: z.string(),
  /** When it was first given, in UTC. */
  at: z.string(),
  text: z.string(),
  /** Its QR code: so many squares each way, and the dark ones as the path of an SVG. */
  code: z.object({ squares: z.int(), path: z.string() }),
});
export type GivenSeal = z.infer<typeof givenSealSchema>;

/** The journal's head as it stands, and the seals that have gone out. */
export const sealViewSchema = z.object({
  entries: z.int(),
  root: z.string(),
  keyFingerprint: z.string(),
  /** The invented household: its seals prove nothing. */
  sample: z.boolean(),
  /** What a seal proves and what it does not, sentence by sentence. */
  proves: z.array(z.string()),
  provesNot: z.array(z.string()),
  /** The latest last. */
  given: z.array(givenSealSchema.omit({ code: true })),
});
export type SealView = z.infer<typeof sealViewSchema>;

/** What a seal proves, sentence by sentence. */
export function sealProves(): string[] {
  return [sayOf('seal-proves-journal'), sayOf('seal-proves-new-key')];
}

/** What a seal does not prove. */
export function sealProvesNot(): string[] {
  return [sayOf('seal-proves-no-truth'), sayOf('seal-proves-no-later')];
}
