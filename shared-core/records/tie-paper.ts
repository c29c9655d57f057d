import { z } from 'zod';
import { obligations } from '../care/obligation.ts';
import { cars } from '../fleet/car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { observations } from './observation.ts';
import { paperDescribed, paperNotes } from './paper-note.ts';
import { paperTied, paperTies, paperTieSchema, paperUntied, tiedKindSchema, type PaperTie } from './paper-tie.ts';
import { papers } from './paper.ts';
import { workRecords } from './work-record.ts';

const MOST = 40;

/** Ties a paper to one or more records, observations, obligations or cars; a paper that was set aside is then no longer. */
export const tiePaper = change({
  request: z.strictObject({ paper: sha256Schema, to: z.array(z.strictObject({ kind: tiedKindSchema, id: idSchema })).min(1).max(MOST) }),
  reply: z.object({ ties: z.array(paperTieSchema) }),
  decide: (facts, request, { newId }) => {
    if (facts.get(papers, request.paper) === null) return refuse('unknown-paper', { paper: request.paper }, ['paper']);
    const ties: PaperTie[] = [];
    for (const [at, { kind, id }] of request.to.entries()) {
      const target = findTarget(facts, kind, id);
      if (!target.ok) return { ok: false, refusal: { ...target.refusal, path: ['to', at, 'id'] } };
      const there = holds(facts, request.paper, kind, id) || ties.some((tie) => tie.kind === kind && tie.to === id);
      if (there) return refuse('paper-tied-there', {}, ['to', at, 'id']);
      ties.push({ id: newId(), paper: request.paper, car: target.value, kind, to: id });
    }
    const note = facts.get(paperNotes, request.paper);
    const back = note?.setAside === true ? [newEntry(paperDescribed, { ...note, setAside: false })] : [];
    return ok({ entries: [...ties.map((tie) => newEntry(paperTied, tie)), ...back], reply: { ties } });
  },
});

/** Unties a paper; what a record was entered with stays with it. */
export const untiePaper = change({
  request: z.strictObject({ tie: idSchema }),
  reply: z.object({ tie: paperTieSchema }),
  decide: (facts, request) => {
    const tie = facts.get(paperTies, request.tie);
    if (tie === null) return refuse('unknown-tie', {}, ['tie']);
    return ok({ entries: [newEntry(paperUntied, { id: tie.id, car: tie.car })], reply: { tie } });
  },
});

/** The car of what a paper is to be tied to. */
function findTarget(facts: Facts, kind: PaperTie['kind'], id: string): Result<string> {
  if (kind === 'car') return facts.get(cars, id) === null ? refuse('unknown-car', { car: id }) : ok(id);
  if (kind === 'record') return carOf(facts.get(workRecords, id), 'unknown-record', { record: id });
  if (kind === 'observation') return carOf(facts.get(observations, id), 'unknown-observation', { observation: id });
  return carOf(facts.get(obligations, id), 'unknown-obligation', { obligation: id });
}

function carOf(found: { readonly car: string } | null, code: string, values: Readonly<Record<string, string>>): Result<string> {
  return found === null ? refuse(code, values) : ok(found.car);
}

/** Whether a fact has the paper already: it was entered with it, or it is tied to it. */
function holds(facts: Facts, paper: string, kind: PaperTie['kind'], id: string): boolean {
  const own = kind === 'record' ? facts.get(workRecords, id)?.papers : kind === 'observation' ? facts.get(observations, id)?.papers : [];
  return own?.includes(paper) === true || facts.all(paperTies).some((tie) => tie.paper === paper && tie.kind === kind && tie.to === id);
}
