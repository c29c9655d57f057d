import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { sha256Schema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { paperDescribed, paperNotes, paperNoteSchema, plainNote, type PaperNote } from './paper-note.ts';
import { paperTies } from './paper-tie.ts';
import { papers } from './paper.ts';

const shape = paperNoteSchema.shape;

/** What the keeper says of a paper: only the fields given; the others stay. */
export const describePaper = change({
  request: z.strictObject({ paper: sha256Schema, name: shape.name.optional(), day: shape.day.optional(), turned: shape.turned.optional(), note: shape.note.optional() }),
  reply: z.object({ note: paperNoteSchema }),
  decide: (facts, { paper, ...fields }, { today }) => {
    if (facts.get(papers, paper) === null) return refuse('unknown-paper', { paper }, ['paper']);
    if (fields.day != null && fields.day > today) return refuse('date-in-future', { date: fields.day }, ['day']);
    const given = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<PaperNote>;
    const note: PaperNote = { ...noteOf(facts, paper), ...given };
    return ok({ entries: [newEntry(paperDescribed, note)], reply: { note } });
  },
});

/** Takes papers out of the inbox, for they need no record; or, with `aside: false`, puts them back. */
export const setPapersAside = change({
  request: z.strictObject({ papers: z.array(sha256Schema).min(1).max(500), aside: z.boolean().default(true) }),
  reply: z.object({ notes: z.array(paperNoteSchema) }),
  decide: (facts, request) => {
    const wanted = [...new Set(request.papers)];
    const strange = wanted.find((paper) => facts.get(papers, paper) === null);
    if (strange !== undefined) return refuse('unknown-paper', { paper: strange }, ['papers']);
    const ties = new Set(facts.all(paperTies).map((tie) => tie.paper));
    const tied = request.aside ? wanted.find((paper) => ties.has(paper)) : undefined;
    if (tied !== undefined) return refuse('paper-is-tied', { name: facts.get(papers, tied)?.name ?? '' }, ['papers']);
    const notes = wanted.map((paper) => noteOf(facts, paper)).filter((note) => note.setAside !== request.aside).map((note) => ({ ...note, setAside: request.aside }));
    return ok({ entries: notes.map((note) => newEntry(paperDescribed, note)), reply: { notes } });
  },
});

function noteOf(facts: Facts, paper: string): PaperNote {
  return facts.get(paperNotes, paper) ?? plainNote(paper);
}
