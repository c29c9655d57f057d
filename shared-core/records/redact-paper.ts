import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Decision } from '../journal/operation.ts';
import { sha256Schema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { MOST_MARKS, markSchema, paperRedacted, paperRedactions, redactionRemoved, type Mark } from './paper-redaction.ts';
import { paperNotes } from './paper-note.ts';
import { papers } from './paper.ts';
import { turnMark } from './turn-mark.ts';

/** All the marks of a paper, in place of those that stood: none takes them away. */
export const redactPaperRequest = z.strictObject({
  paper: sha256Schema,
  marks: z.array(markSchema).max(MOST_MARKS),
  /** How the paper was turned when it was marked; left out: as it is turned now. */
  turned: z.literal([0, 90, 180, 270]).optional(),
});
export const redactPaperReply = z.object({ marks: z.array(markSchema) });

/** Notes which parts of a paper are blacked out in what is handed over. Refused `nothing-blacked-out` where no marks are to take none's place. */
export function decideRedaction(facts: Facts, { paper, marks, turned }: z.output<typeof redactPaperRequest>): Result<Decision<{ marks: Mark[] }>> {
  if (facts.get(papers, paper) === null) return refuse('unknown-paper', { paper }, ['paper']);
  const stands = facts.get(paperRedactions, paper);
  if (marks.length === 0) return stands === null ? refuse('nothing-blacked-out') : ok({ entries: [newEntry(redactionRemoved, { id: paper, car: null })], reply: { marks } });
  const kept = marks.map((mark) => turnMark(mark, 0));
  const empty = kept.findIndex((mark) => mark.width === 0 || mark.height === 0);
  if (empty >= 0) return refuse('mark-too-small', {}, ['marks', empty]);
  const entry = newEntry(paperRedacted, { id: paper, turned: turned ?? facts.get(paperNotes, paper)?.turned ?? 0, marks: kept });
  return ok({ entries: [entry], reply: { marks: kept } });
}
