import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import type { Facts } from '../journal/facts.ts';
import { sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { papers, type Paper } from './paper.ts';

/** What the keeper says of a paper; the paper itself stays as it came. */
export const paperNoteSchema = z.strictObject({
  /** The paper's own id. */
  id: sha256Schema,
  /** A short name in place of the file's; null: the file's. */
  name: plainText(120).nullable(),
  /** The day it belongs to; null: as its own bytes tell. */
  day: dateSchema.nullable(),
  /** How it is turned to be looked at, clockwise, in degrees. */
  turned: z.literal([0, 90, 180, 270]),
  note: longText(1000),
  /** It needs no record: it is out of the inbox. */
  setAside: z.boolean(),
});
export type PaperNote = z.infer<typeof paperNoteSchema>;

export const paperNotes = family('paper-note', 'records', paperNoteSchema);
export const paperDescribed = factEntry('paper-described', paperNotes, { car: () => null, refersTo: (note) => refers(papers, note.id) });

/** What stands of a paper of which the keeper has said nothing. */
export function plainNote(paper: string): PaperNote {
  return { id: paper, name: null, day: null, turned: 0, note: '', setAside: false };
}

/** What a paper is called: the keeper's own name for it, else that of its file. */
export function paperName(facts: Facts, paper: Paper): string {
  return facts.get(paperNotes, paper.id)?.name ?? paper.name;
}
