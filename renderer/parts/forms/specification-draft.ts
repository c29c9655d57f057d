import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { SpecificationView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import type { Choice } from '../../ui/household-choices.ts';
import { tell } from '../../ui/words/tell.ts';

type Specification = SpecificationView['specification'];

export interface AskDraft {
  readonly kind: string;
  readonly text: string;
}

export interface SpecificationDraft {
  readonly name: string;
  readonly unit: string;
  readonly asks: readonly AskDraft[];
  readonly use: string;
  readonly base: string;
  readonly mix: boolean;
  readonly step: string;
  readonly note: string;
}

/** The form as it opens. */
export function specificationDraft(now: Specification | null): SpecificationDraft {
  return { name: now?.name ?? '', unit: now?.unit ?? 'each', asks: now?.asks ?? [], use: now?.fluid?.use ?? 'none', base: now?.fluid?.base ?? '', mix: now?.mix ?? false, step: now === null ? '' : (now.step?.toString() ?? ''), note: now?.note ?? '' };
}

const BASES = {
  'brake-fluid': ['glycol', 'silicone', 'mineral-oil'],
  coolant: ['inorganic-acid', 'organic-acid', 'hybrid-organic-acid'],
  grease: ['lithium', 'lithium-complex', 'calcium', 'calcium-sulfonate', 'polyurea', 'clay', 'sodium', 'silicone'],
} as const;

/** What a fluid may be made on. */
export function baseChoices(use: string): Choice[] {
  const bases = Object.hasOwn(BASES, use) ? BASES[use as keyof typeof BASES] : [];
  return [{ value: '', label: tell('fluid-base.unknown') }, ...bases.map((value) => ({ value, label: tell(`fluid-base.${value}`) }))];
}

/** States the specification as it was typed; what is counted comes in whole pieces. */
export async function sendSpecification(draft: SpecificationDraft, now: Specification | null): Promise<Result<Changed<'specification.set'>>> {
  const read = new FieldsRead();
  const step = read.numberOrNull('step', draft.step);
  const whole = read.whole<RequestOf<'specification.set'>>({
    ...(now === null ? {} : { id: now.id }),
    name: draft.name,
    unit: draft.unit as Specification['unit'],
    asks: draft.asks.map(({ kind, text }) => ({ kind: kind as Specification['asks'][number]['kind'], text })),
    fluid: draft.use === 'none' ? null : { use: draft.use as 'coolant', base: draft.base === '' ? null : draft.base },
    mix: draft.mix,
    step: step ?? (now === null && (draft.unit === 'each' || draft.unit === 'set') ? 1 : null),
    note: draft.note,
  });
  return whole.ok ? change('specification.set', whole.value) : whole;
}
