import { refuse, type Result } from '../../shared-core/result/result.ts';
import { storeRefusal } from '../store/store-refusal.ts';
import { fileRefusal } from './file-refusal.ts';

/**
 * What was thrown on the way to an answer: a fault of disk or database is refused with its sentence; our own bug is written to
 * the log under a note that the person can quote.
 */
export function failure(error: unknown, operation: string, file: string): Result<never> {
  for (const refusal of [() => storeRefusal(error, file), () => fileRefusal(error)]) {
    try {
      return refusal();
    } catch {
      // Not of this sort.
    }
  }
  return bug(error, operation);
}

/** Our own bug: noted for whoever looks into it, and refused under the note's number. */
export function bug(error: unknown, operation: string): Result<never> {
  const ref = Math.random().toString(36).slice(2, 8);
  console.error(`[${ref}] ${operation}:`, error);
  return refuse('internal', { ref });
}
