import { z } from 'zod';
import { refusedBy } from './refused-by.ts';

/** The id of a fact: lower-case letters, digits and hyphens; given by the sender, or by the host where none is given. */
export const idSchema = z.string().regex(/^[a-z0-9][a-z0-9-]{0,63}$/, refusedBy('not-an-id'));

/** A SHA-256 digest in lower-case hex: the id of a paper. */
export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, refusedBy('not-a-digest'));
