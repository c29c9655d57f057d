import type { Result } from '../../../shared-core/result/result.ts';
import type { Closing } from '../../../shared-core/views/closing-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import type { ClosingChanges } from './closing-changes.ts';
import { composeClosing } from './closing-draft.ts';

type Reply = Changed<'session.close'>;

/** Keeps the papers of each car, then closes the session; where that is refused the papers are withdrawn again. */
export async function sendClosing(draft: ClosingChanges, closing: Closing, currency: string): Promise<Result<Reply>> {
  const whole = composeClosing(draft, closing, currency);
  if (!whole.ok) return whole;
  const kept = new Map<number, string[]>();
  const keepFrom = (at: number): Promise<Result<Reply>> => {
    const car = closing.cars[at];
    if (car === undefined) return change('session.close', { ...whole.value, cars: whole.value.cars.map((one, index) => ({ ...one, papers: kept.get(index) ?? [] })) });
    return withPapers(draft.cars[car.car]?.files ?? [], (papers) => {
      kept.set(at, papers);
      return keepFrom(at + 1);
    });
  };
  const result = await keepFrom(0);
  // A refused reading names its own field, which stands here under another name.
  const path = result.ok ? [] : (result.refusal.path ?? []);
  return result.ok || path[0] !== 'cars' || path[2] !== 'value' ? result : { ok: false, refusal: { ...result.refusal, path: ['cars', path[1] ?? 0, 'reading'] } };
}
