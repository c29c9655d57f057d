import { z } from 'zod';
import { obligations } from '../care/obligation.ts';
import { cars } from '../fleet/car.ts';
import { refers, type Reference } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { observations } from './observation.ts';
import { papers } from './paper.ts';
import { workRecords } from './work-record.ts';

/** What a paper can be tied to: a work record, something seen, an obligation, or the car as a whole. */
export const tiedKindSchema = z.enum(['record', 'observation', 'obligation', 'car']);

/**
 * A paper that belongs to something of a car. It is an entry of that car, so that a pack holds it and proves the paper by its digest; one paper
 * may have many.
 */
export const paperTieSchema = z.strictObject({
  id: idSchema,
  paper: sha256Schema,
  car: idSchema,
  kind: tiedKindSchema,
  /** The id of the record, the observation or the obligation; for a whole car, the car's own. */
  to: idSchema,
});
export type PaperTie = z.infer<typeof paperTieSchema>;

export const paperTies = family('paper-tie', 'records', paperTieSchema);
export const paperTied = factEntry('paper-tied', paperTies, {
  car: (tie) => tie.car,
  refersTo: (tie) => [...refers(papers, tie.paper), ...refers(cars, tie.car), ...targetOf(tie)],
});
export const paperUntied = factRemoval('paper-untied', paperTies);

function targetOf({ kind, to }: PaperTie): readonly Reference[] {
  if (kind === 'record') return refers(workRecords, to);
  if (kind === 'observation') return refers(observations, to);
  return kind === 'obligation' ? refers(obligations, to) : [];
}
