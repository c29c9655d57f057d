import type { Facts } from '../journal/facts.ts';
import { observations, type Observation } from './observation.ts';
import { paperTies, type PaperTie } from './paper-tie.ts';
import { workRecords, type WorkRecord } from './work-record.ts';

/** A car's work records, each with all its papers: those it was entered with, then those tied to it. */
export function recordsWithPapers(facts: Facts, car: string): readonly WorkRecord[] {
  const tied = tiedTo(facts, car, 'record');
  return facts.ofCar(workRecords, car).map((record) => withPapers(record, tied));
}

/** What was seen of a car, each with all its papers. */
export function observationsWithPapers(facts: Facts, car: string): readonly Observation[] {
  const tied = tiedTo(facts, car, 'observation');
  return facts.ofCar(observations, car).map((seen) => withPapers(seen, tied));
}

/** The papers tied to a car's facts of a kind, by the fact's id. */
export function tiedTo(facts: Facts, car: string, kind: PaperTie['kind']): ReadonlyMap<string, readonly string[]> {
  const tied = new Map<string, string[]>();
  for (const tie of facts.ofCar(paperTies, car)) if (tie.kind === kind) tied.set(tie.to, [...(tied.get(tie.to) ?? []), tie.paper]);
  return tied;
}

function withPapers<Held extends { readonly id: string; readonly papers: string[] }>(held: Held, tied: ReadonlyMap<string, readonly string[]>): Held {
  const more = tied.get(held.id);
  return more === undefined ? held : { ...held, papers: [...new Set([...held.papers, ...more])] };
}
