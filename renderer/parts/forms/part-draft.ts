import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

type Part = PartsView['parts'][number]['part'];

/** A specification that a part meets, with who says so. */
export interface MeetsDraft {
  readonly specification: string;
  readonly by: string;
  readonly basis: string;
  readonly source: string;
}

export interface PartDraft {
  readonly name: string;
  readonly number: string;
  readonly kit: boolean;
  readonly meets: readonly MeetsDraft[];
  readonly contains: readonly { readonly part: string; readonly quantity: string }[];
  readonly keepsOpenedDays: string;
}

/** A specification as it is added: on the keeper's own word. */
export function meetsStart(specification: string): MeetsDraft {
  return { specification, by: 'keeper', basis: 'fit', source: '' };
}

/** The form as it opens. */
export function partDraft(now: Part | null, meets: string | null): PartDraft {
  return {
    name: now?.name ?? '',
    number: now?.number ?? '',
    kit: (now?.contains.length ?? 0) > 0,
    meets: now === null ? (meets === null ? [] : [meetsStart(meets)]) : now.meets.map((id) => ({ ...meetsStart(id), ...statedOf(now, id) })),
    contains: (now?.contains ?? []).map(({ part, quantity }) => ({ part, quantity: String(quantity) })),
    keepsOpenedDays: now?.keepsOpenedDays?.toString() ?? '',
  };
}

function statedOf(part: Part, id: string): Partial<MeetsDraft> {
  const stated = part.stated.find((one) => one.specification === id);
  return stated === undefined ? {} : { by: stated.by, basis: stated.basis, source: stated.source ?? '' };
}

/** States the part as it was typed. */
export async function sendPart(draft: PartDraft, now: Part | null): Promise<Result<Changed<'part.set'>>> {
  const read = new FieldsRead();
  const meets = draft.kit ? [] : draft.meets;
  if (draft.kit && draft.contains.length === 0) read.refuse('contains', 'kit-is-empty');
  const whole = read.whole<RequestOf<'part.set'>>({
    ...(now === null ? {} : { id: now.id }),
    name: draft.name,
    number: textOrNull(draft.number),
    meets: meets.map((one) => one.specification),
    stated: meets.map((one) => ({ specification: one.specification, by: one.by as 'keeper', basis: one.basis as 'fit', source: textOrNull(one.source) })),
    contains: draft.kit ? draft.contains.map((one, at) => ({ part: one.part, quantity: read.number(`contains.${at}.quantity`, one.quantity, '2') })) : [],
    keepsOpenedDays: draft.kit ? null : read.wholeOrNull('keepsOpenedDays', draft.keepsOpenedDays),
  });
  return whole.ok ? change('part.set', whole.value) : whole;
}
