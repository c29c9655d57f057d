import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { packPeriodSchema, isWithin, WHOLE_HISTORY } from '../handover/pack-period.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { paperName } from '../records/paper-note.ts';
import { paperRedactions } from '../records/paper-redaction.ts';
import { paperSchema, papers, type Paper } from '../records/paper.ts';
import { previousPacks } from '../records/previous-pack.ts';
import { must } from '../result/assert.ts';
import { ok } from '../result/result.ts';
import { papersOfCar } from './papers-of-car.ts';

/** The papers that could go into a car's pack, in the order of their dates. */
export const listPackPapers = ask({
  request: z.strictObject({ car: z.string().min(1).max(80), period: packPeriodSchema.default(WHOLE_HISTORY) }),
  /** `name`: what the keeper calls it. `blackedOut`: how many parts of a paper are black in the copy that goes in its place. `previous`: the packs of earlier keepers, by name. */
  reply: z.object({ papers: z.array(paperSchema.extend({ blackedOut: z.int() })), previous: z.array(z.string()) }),
  answer: (facts, { car, period }) => {
    const found = findCar(facts, car);
    if (!found.ok) return found;
    return ok({ papers: papersOfCar(facts, found.value.id, (date) => isWithin(period, date)).map((id) => lineOf(facts, id)), previous: facts.ofCar(previousPacks, found.value.id).map((one) => one.name) });
  },
});

function lineOf(facts: Facts, id: string): Paper & { readonly blackedOut: number } {
  const paper = must(facts.get(papers, id), 'paper of a car');
  return { ...paper, name: paperName(facts, paper), blackedOut: facts.get(paperRedactions, id)?.marks.length ?? 0 };
}
