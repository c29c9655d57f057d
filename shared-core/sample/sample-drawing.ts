import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';

/** What an invented photograph may show. */
export const photographSubjectSchema = z.enum(['brake-pad', 'tyre-tread', 'underside', 'car']);
export type PhotographSubject = z.infer<typeof photographSubjectSchema>;

/** One line of an invented receipt; the amount in minor units. */
export interface DrawnLine {
  readonly text: string;
  readonly amountMinor: number;
}

/** What every invented sheet of paper carries at its top. */
interface DrawnSheet {
  readonly heading: string;
  readonly number: string;
  readonly date: LocalDate;
  /** The date as printed, where it is not in full words. */
  readonly printedDate?: string;
  readonly car: string;
  /** As printed: value and unit; null where nobody wrote it down. */
  readonly odometer: string | null;
}

/** A receipt: lines and a printed total, which need not be their sum. */
export interface ReceiptDrawing extends DrawnSheet {
  readonly kind: 'receipt';
  readonly currency: string;
  readonly lines: readonly DrawnLine[];
  readonly totalMinor: number;
}

/** A certificate and what it states. */
export interface CertificateDrawing extends DrawnSheet {
  readonly kind: 'certificate';
  readonly statements: readonly string[];
}

/** A photograph drawn by code: what it shows, how worn that is (0 new, 1 worn out), and the seed of its grain. */
export interface PhotographDrawing {
  readonly kind: 'photograph';
  readonly subject: PhotographSubject;
  readonly wear: number;
  readonly seed: number;
  /** When the camera says it was taken: its local time and how far that is from UTC; without it nothing is noted. */
  readonly taken?: { readonly at: `${LocalDate} ${string}`; readonly offset: string };
}

/** The description of an invented paper, from which the host draws its bytes: the same description, the same bytes. */
export type SampleDrawing = ReceiptDrawing | CertificateDrawing | PhotographDrawing;
