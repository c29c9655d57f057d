import { localDate } from '../../shared-core/calendar/local-date.ts';
import type { RequestOf } from '../../shared-core/contract/contract.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import type { Withheld } from '../ui/withheld-groups.ts';

/** What is chosen for a pack while it is being chosen. */
export interface PackDraft {
  readonly car: string;
  readonly from: string;
  readonly to: string;
  readonly withhold: readonly Withheld[];
  /** Of the papers, those left out. */
  readonly leftOut: readonly string[];
  readonly cover: string;
  /** Copies with black parts name the papers they were made from. */
  readonly nameOriginals: boolean;
  /** What becomes of the packs of earlier keepers; empty: nothing was said. */
  readonly previous: '' | 'whole' | 'left-out';
  readonly paperSize: 'A4' | 'LETTER';
}

/** A whole history with all its papers. */
export function packDraft(car: string): PackDraft {
  return { car, from: '', to: '', withhold: [], leftOut: [], cover: '', nameOriginals: false, previous: '', paperSize: 'A4' };
}

/** The request that a draft comes to; refused `no-date` at the field that is none. */
export function packRequest(draft: PackDraft, papers: readonly string[]): Result<RequestOf<'pack.preview'>> {
  const [from, to] = [localDate(draft.from), localDate(draft.to)];
  if (draft.from !== '' && !from.ok) return refuse('no-date', {}, ['period', 'from']);
  if (draft.to !== '' && !to.ok) return refuse('no-date', {}, ['period', 'to']);
  const only = papers.filter((id) => !draft.leftOut.includes(id));
  const period = { from: from.ok ? from.value : null, to: to.ok ? to.value : null };
  const onlyPapers = only.length === papers.length ? null : only;
  return { ok: true, value: { car: draft.car, withhold: [...draft.withhold], papers: true, onlyPapers, cover: draft.cover === '' ? null : draft.cover, period, nameOriginals: draft.nameOriginals, previous: draft.previous === '' ? null : draft.previous, paperSize: draft.paperSize } };
}
