import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { recalls, recallSchema, type Recall } from '../care/recall.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';

/** How a recall stands: not done; booked; done; done and due again. */
export const recallViewSchema = z.object({
  recall: recallSchema,
  state: z.enum(['open', 'booked', 'done', 'again']),
  /** Its day has passed. */
  late: z.boolean(),
  text: z.string(),
});
export type RecallView = z.infer<typeof recallViewSchema>;

const RANK = { open: 0, booked: 1, again: 2, done: 3 } as const;

/** Every recall of a car: the open ones first, then by their next day, then by number. */
export function recallViews(facts: Facts, car: string, today: LocalDate): RecallView[] {
  const next = ({ recall }: RecallView) => recall.nextOn ?? '9999';
  return facts
    .ofCar(recalls, car)
    .map((recall) => recallView(recall, today))
    .sort((a, b) => RANK[a.state] - RANK[b.state] || (next(a) < next(b) ? -1 : next(a) > next(b) ? 1 : a.recall.number.localeCompare(b.recall.number, 'en')));
}

function recallView(recall: Recall, today: LocalDate): RecallView {
  const { doneOn, nextOn } = recall;
  const state = doneOn === null ? (nextOn === null ? 'open' : 'booked') : nextOn === null ? 'done' : 'again';
  const late = nextOn !== null && nextOn < today;
  const key = late ? `recall-${state}-late` : `recall-${state}`;
  return { recall, state, late, text: say({ key, values: { number: recall.number, doneOn, nextOn, how: recall.how } }) };
}
