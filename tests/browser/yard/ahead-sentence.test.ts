import { expect, test } from 'vitest';
import { aheadSentence } from '../../../renderer/yard/ahead-sentence.ts';

const NONE = { days: 90, items: 0, late: 0, obligations: 0, recalls: 0, allowances: 0, minutes: 0, withoutMinutes: 0 };

/** Source for all: our own words. */
test.each([
  { case: 'nothing', ahead: NONE, says: 'Nothing falls due in the next 90 days.' },
  { case: 'one of each', ahead: { ...NONE, items: 1, late: 1, obligations: 1, minutes: 60 }, says: 'Next 90 days: 1 item falls due, and it is late already; 1 obligation ends; about 1 h of work.' },
  { case: 'several', ahead: { ...NONE, items: 7, late: 2, obligations: 3, minutes: 320 }, says: 'Next 90 days: 7 items fall due, 2 of them late already; 3 obligations end; about 5 h 20 min of work.' },
  { case: 'minutes in part', ahead: { ...NONE, items: 2, minutes: 45, withoutMinutes: 1 }, says: 'Next 90 days: 2 items fall due; about 45 min of work that is known.' },
  { case: 'a recall alone', ahead: { ...NONE, recalls: 1 }, says: 'Next 90 days: no item falls due; 1 recall waits.' },
  { case: 'recalls and allowances', ahead: { ...NONE, items: 2, obligations: 1, recalls: 2, allowances: 1 }, says: 'Next 90 days: 2 items fall due; 1 obligation ends; 2 recalls wait; 1 distance allowance runs out.' },
  { case: 'obligations alone', ahead: { ...NONE, obligations: 2 }, says: 'Next 90 days: no item falls due; 2 obligations end.' },
])('the sentence on top says $case', ({ ahead, says }) => expect(aheadSentence(ahead)).toBe(says));
