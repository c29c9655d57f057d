import { z } from 'zod';

/** How the screens may look: as the computer asks for it, or one of our own themes whatever it asks for. */
export const LOOKS = ['system', 'light', 'dark', 'contrast-light', 'contrast-dark'] as const;

/** Kept in a file beside the household, which is no part of it: no entry tells of it and no pack or copy holds it. */
export const lookSchema = z.enum(LOOKS);
export type Look = z.infer<typeof lookSchema>;
