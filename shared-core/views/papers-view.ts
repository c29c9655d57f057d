import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { dateOfInstant, type LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Household } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { captureDay } from '../records/capture-time.ts';
import { plainWords } from '../records/names-in-text.ts';
import type { PaperContents } from '../records/paper-contents.ts';
import { paperNotes, plainNote, type PaperNote } from '../records/paper-note.ts';
import { markSchema, paperRedactions, type Mark } from '../records/paper-redaction.ts';
import { marksTurned } from '../records/turn-mark.ts';
import { papers, paperMediaSchema, paperSchema, type Paper } from '../records/paper.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { paperSuggestions, paperSuggestionSchema, paperTargets, paperTells, recordStart, recordStartSchema, type ShownTarget } from './paper-suggestions.ts';
import { paperUses, paperUseSchema, type PaperUse } from './paper-uses.ts';

/** How many papers stand on one page of the list. */
const A_PAGE = 60;

export const papersRequestSchema = z.strictObject({
  show: z.enum(['inbox', 'tied', 'aside', 'all']).default('inbox'),
  /** Papers of one car, by its id. */
  car: z.string().min(1).max(80).nullable().default(null),
  kind: z.enum(['pdf', 'picture', 'other']).nullable().default(null),
  /** Words of the name, the note, what it belongs to, or the text of a PDF. */
  search: z.string().max(200).default(''),
  page: z.int().min(1).max(100_000).default(1),
});
export type PapersRequest = z.output<typeof papersRequestSchema>;

/** A paper as every list shows it. */
export const paperLineSchema = z.object({
  id: z.string(),
  /** The keeper's name for it, or the file's. */
  name: z.string(),
  media: paperMediaSchema,
  bytes: z.number(),
  keptOn: dateSchema,
  day: dateSchema.nullable(),
  /** Where the day is from: the keeper, or the camera. */
  dayFrom: z.enum(['keeper', 'camera']).nullable(),
  turned: z.literal([0, 90, 180, 270]),
  state: z.enum(['read', 'unreadable', 'locked', 'opaque', 'unseen']),
  pages: z.number(),
  uses: z.array(paperUseSchema),
  aside: z.boolean(),
  /** How many parts of it are blacked out in what is handed over. */
  blackedOut: z.int(),
  /** What it most probably belongs to, where it belongs to nothing yet. */
  best: paperSuggestionSchema.nullable(),
});
export type PaperLine = z.infer<typeof paperLineSchema>;

export const papersViewSchema = z.object({
  today: dateSchema,
  counts: z.object({ inbox: z.number(), tied: z.number(), aside: z.number(), all: z.number() }),
  cars: z.array(z.object({ id: z.string(), name: z.string() })),
  /** How many there are of what was asked for, and which page of them this is. */
  found: z.number(),
  page: z.number(),
  pages: z.number(),
  papers: z.array(paperLineSchema),
});
export type PapersView = z.infer<typeof papersViewSchema>;

export const paperViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  paper: paperLineSchema,
  fileName: paperSchema.shape.name,
  note: z.string(),
  /** What is blacked out in what is handed over, as it stands on the paper as it is turned now. */
  marks: z.array(markSchema),
  cars: z.array(z.object({ id: z.string(), name: z.string() })),
  suggestions: z.array(paperSuggestionSchema),
  /** What a new record from it could begin with. */
  start: recordStartSchema,
  /** The clock of its camera in words; null where there is none. */
  taken: z.object({ day: dateSchema, time: z.string(), offset: z.string().nullable(), source: z.enum(['original', 'digitized', 'changed', 'gps']) }).nullable(),
});
export type PaperView = z.infer<typeof paperViewSchema>;

/** What a paper's bytes tell, where it has been looked into. */
export type Look = (paper: string) => PaperContents | null;

/** The papers of the household: what is asked for, the newest kept first, one page of them. */
export function papersView(standing: Facts, request: PapersRequest, look: Look, today: LocalDate): Result<PapersView> {
  const facts = rememberedFacts(standing);
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const uses = paperUses(facts);
  const stamps = facts.stamps(papers, null);
  const all = facts.all(papers).map((paper) => ({ paper, note: facts.get(paperNotes, paper.id) ?? plainNote(paper.id), uses: uses.get(paper.id) ?? [], seq: stamps.get(paper.id)?.firstSeq ?? 0 }));
  const ofShow = (show: PapersRequest['show']) => all.filter((one) => show === 'all' || placeOf(one) === show);
  const found = ofShow(request.show).filter((one) => isWanted(one, request, look)).sort((a, b) => b.seq - a.seq);
  const pages = Math.max(1, Math.ceil(found.length / A_PAGE));
  const page = Math.min(request.page, pages);
  const targets = paperTargets(facts);
  return ok({
    today,
    counts: { inbox: ofShow('inbox').length, tied: ofShow('tied').length, aside: ofShow('aside').length, all: all.length },
    cars: carsOf(facts),
    found: found.length,
    page,
    pages,
    papers: found.slice((page - 1) * A_PAGE, page * A_PAGE).map((one) => lineOf(facts, one, { household: household.value, look, today, targets })),
  });
}

/** One paper with all there is to know of it, and what it may belong to. */
export function paperView(standing: Facts, id: string, look: Look, today: LocalDate): Result<PaperView> {
  const facts = rememberedFacts(standing);
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const paper = facts.get(papers, id);
  if (paper === null) return refuse('unknown-paper', { paper: id }, ['paper']);
  const note = facts.get(paperNotes, id) ?? plainNote(id);
  const uses = paperUses(facts).get(id) ?? [];
  const contents = look(id);
  const tells = paperTells(contents, dayOf(note, contents, today).day, household.value, today);
  const has = new Set(uses.map((use) => `${use.kind} ${use.id}`));
  const targets = paperTargets(facts).filter((target) => !has.has(`${target.kind} ${target.id}`));
  const suggestions = paperSuggestions(tells, targets, household.value.currency);
  return ok({
    today,
    currency: household.value.currency,
    paper: lineOf(facts, { paper, note, uses }, { household: household.value, look, today, targets }),
    fileName: paper.name,
    note: note.note,
    marks: marksOf(facts, note),
    cars: carsOf(facts),
    suggestions,
    start: recordStart(facts, tells),
    taken: contents?.capture == null ? null : { day: contents.capture.day, time: contents.capture.time, offset: contents.capture.offset, source: contents.capture.source },
  });
}

function marksOf(facts: Facts, { id, turned }: PaperNote): Mark[] {
  const redaction = facts.get(paperRedactions, id);
  return redaction === null ? [] : marksTurned(redaction, turned);
}

interface Held {
  readonly paper: Paper;
  readonly note: PaperNote;
  readonly uses: readonly PaperUse[];
}

interface Around {
  readonly household: Household;
  readonly look: Look;
  readonly today: LocalDate;
  readonly targets: readonly ShownTarget[];
}

function placeOf({ note, uses }: Held): 'inbox' | 'tied' | 'aside' {
  return uses.length > 0 ? 'tied' : note.setAside ? 'aside' : 'inbox';
}

function isWanted({ paper, note, uses }: Held, { car, kind, search }: PapersRequest, look: Look): boolean {
  if (car !== null && !uses.some((use) => use.car === car)) return false;
  if (kind !== null && kind !== kindOf(paper)) return false;
  const wanted = plainWords(search).trim();
  if (wanted === '') return true;
  const text = plainWords([paper.name, note.name ?? '', note.note, ...uses.map((use) => use.title), look(paper.id)?.text ?? ''].join(' '));
  return wanted.split(' ').every((word) => text.includes(word));
}

function kindOf({ media }: Paper): 'pdf' | 'picture' | 'other' {
  return media === 'application/pdf' ? 'pdf' : media === 'application/octet-stream' ? 'other' : 'picture';
}

function lineOf(facts: Facts, held: Held, { household, look, today, targets }: Around): PaperLine {
  const { paper, note, uses } = held;
  const contents = look(paper.id);
  const { day, dayFrom } = dayOf(note, contents, today);
  const best = placeOf(held) === 'inbox' ? paperSuggestions(paperTells(contents, day, household, today), targets, household.currency)[0] : undefined;
  return {
    id: paper.id,
    name: note.name ?? paper.name,
    media: paper.media,
    bytes: paper.bytes,
    keptOn: dateOfInstant(must(facts.stamps(papers, null).get(paper.id), 'stamp of a paper').firstAt),
    day, dayFrom,
    turned: note.turned,
    state: contents?.state ?? 'unseen',
    pages: contents?.pages ?? 0,
    uses: [...uses],
    aside: placeOf(held) === 'aside',
    blackedOut: facts.get(paperRedactions, paper.id)?.marks.length ?? 0,
    best: best ?? null,
  };
}

function dayOf(note: PaperNote, contents: PaperContents | null, today: LocalDate): Pick<PaperLine, 'day' | 'dayFrom'> {
  if (note.day !== null) return { day: note.day, dayFrom: 'keeper' };
  const taken = captureDay(contents?.capture ?? null, today);
  return taken === null ? { day: null, dayFrom: null } : { day: taken, dayFrom: 'camera' };
}

function carsOf(facts: Facts): PapersView['cars'] {
  return facts.all(cars).map(({ id, name }) => ({ id, name }));
}
