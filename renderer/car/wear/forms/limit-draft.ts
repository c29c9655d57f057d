import type { RequestOf } from '../../../../shared-core/contract/contract.ts';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { WearSeriesView } from '../../../../shared-core/views/wear-view.ts';
import { change, type Changed } from '../../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../../ui/form/read-fields.ts';
import { sayFault } from '../../../ui/form/say-fault.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { unitToStart, type MeasuredUnit } from '../value-words.ts';

type Standing = WearSeriesView['limits'][number];

/** What is typed into the form of a limit. */
export interface LimitDraft {
  /** 'this' one alone, or 'all' of its kind. */
  readonly scope: string;
  readonly law: string;
  readonly value: string;
  readonly unit: string;
  readonly by: string;
  readonly rises: string;
  readonly source: string;
}

/** The limit that the keeper set and that can be taken back; null where there is none, or an item gives it. */
export function standingLimit({ limits }: WearSeriesView): Standing | null {
  return limits.find((one) => one.from !== 'item') ?? null;
}

/** The form as it opens: the limit as it stands. */
export function limitDraft(series: WearSeriesView, locale: string): LimitDraft {
  const standing = standingLimit(series);
  const { way } = series;
  // Where an item gives the limit, one for all of the kind would change nothing.
  const alone = series.limits[0]?.from === 'series' || series.limits[0]?.from === 'item';
  return {
    scope: alone && (series.wheel !== null || series.place !== null) ? 'this' : 'all',
    law: '',
    value: standing === null ? '' : String(standing.limit.value),
    unit: standing?.limit.unit ?? unitToStart(series.what, [series], locale),
    by: way?.by ?? 'distance',
    rises: way?.rises === true ? 'yes' : 'no',
    source: standing?.source ?? '',
  };
}

/** Sets the limit that was typed. */
export async function sendLimit(draft: LimitDraft, series: WearSeriesView, car: string): Promise<Result<Changed<'wear-limit.set'>>> {
  const read = new FieldsRead();
  const way = series.what === 'other' ? { by: draft.by as 'time', rises: draft.rises === 'yes' } : null;
  const whole = read.whole({ ...subjectFor(series, draft.scope === 'this'), car, limit: { value: read.number('value', draft.value), unit: draft.unit as MeasuredUnit }, way, source: textOrNull(draft.source) });
  return whole.ok ? change('wear-limit.set', whole.value) : whole;
}

/** Takes back a limit that the keeper set: for this one, or for all of its kind. */
export async function takeBackLimit(series: WearSeriesView, car: string, standing: Standing, onDone: () => void): Promise<void> {
  const result = await change('wear-limit.set', { ...subjectFor(series, standing.from === 'series'), car, limit: null });
  note(result.ok ? tell('limit-form.taken-back') : sayFault(result.refusal), result.ok ? result.value.undo : []);
  if (result.ok) onDone();
}

function subjectFor({ what, name, wheel, place }: WearSeriesView, alone: boolean): Pick<RequestOf<'wear-limit.set'>, 'what' | 'name' | 'place' | 'wheel'> {
  if (!alone) return { what, name, place: null, wheel: null };
  return wheel === null ? { what, name, place, wheel: null } : { what, name, place: null, wheel: wheel.id };
}
