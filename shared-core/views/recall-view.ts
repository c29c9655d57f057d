import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { dateOfInstant, earliest, type LocalDate } from '../calendar/local-date.ts';
import { arrangeFrom } from '../care/arrange-from.ts';
import { recalls, recallSchema, type Recall } from '../care/recall.ts';
import type { Facts } from '../journal/facts.ts';
import { compareNames } from '../result/compare-names.ts';
import { must } from '../result/assert.ts';
import { say } from '../result/words/say.ts';
import { LEAST_NOTICE_DAYS } from './notice-days.ts';

/** How a recall stands: not done; booked; done; done and due again. */
export const recallViewSchema = z.object({
  recall: recallSchema,
  state: z.enum(['open', 'booked', 'done', 'again']),
  /** Its day has passed. */
  late: z.boolean(),
  /** An open one from the day it was entered, a booked one or one due again ahead of its day; null where it is done. */
  arrangeFrom: dateSchema.nullable(),
  text: z.string(),
});
export type RecallView = z.infer<typeof recallViewSchema>;

const RANK = { open: 0, booked: 1, again: 2, done: 3 } as const;

/** Every recall of a car: the open ones first, then by their next day, then by number. */
export function recallViews(facts: Facts, car: string, today: LocalDate): RecallView[] {
  const stamps = facts.stamps(recalls, car);
  const next = ({ recall }: RecallView) => recall.nextOn ?? '9999';
  return facts
    .ofCar(recalls, car)
    .map((recall) => recallView(recall, dateOfInstant(must(stamps.get(recall.id), 'stamp of a recall').firstAt), today))
    .sort((a, b) => RANK[a.state] - RANK[b.state] || (next(a) < next(b) ? -1 : next(a) > next(b) ? 1 : compareNames(a.recall.number, b.recall.number)));
}

function recallView(recall: Recall, enteredOn: LocalDate, today: LocalDate): RecallView {
  const { doneOn, nextOn } = recall;
  const state = doneOn === null ? (nextOn === null ? 'open' : 'booked') : nextOn === null ? 'done' : 'again';
  const late = nextOn !== null && nextOn < today;
  const key = late ? `recall-${state}-late` : `recall-${state}`;
  return {
    recall, state, late,
    arrangeFrom: arrangeFrom(LEAST_NOTICE_DAYS, state === 'open' ? earliest(enteredOn, today) : null, nextOn),
    text: say({ key, values: { number: recall.number, doneOn, nextOn, how: recall.how } }),
  };
}
