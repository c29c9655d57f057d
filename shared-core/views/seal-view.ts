import { z } from 'zod';

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
export const SEAL_PROVES = [
  'Whoever holds this seal can later tell whether a history pack of this household comes from the journal that stood on the day of the seal: the same key, and every entry of that day still there, unchanged and in its order.',
  'It finds a pack that was made anew as a whole with another key, which no check without a seal can find.',
] as const;

/** What a seal does not prove. */
export const SEAL_PROVES_NOT = [
  'It does not show that what was entered is true, nor that all was entered.',
  'It says nothing of what is entered later, and it holds no word of the history itself.',
] as const;
