import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { torqueUnitSchema } from '../../../shared-core/units/torque.ts';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { unitToBegin } from './figure-units.ts';

/** What is typed into the form of a figure. */
export interface FigureDraft {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  readonly thread: string;
  readonly strength: string;
  readonly seat: string;
  readonly source: string;
  /** The id of a paper, or empty. */
  readonly paper: string;
  readonly files: readonly File[];
  readonly note: string;
}

/** The form as it opens: the figure as it stands, or empty with the unit that this card is written in. */
export function figureDraft(card: CardView, figure: FigureView): FigureDraft {
  const { value } = figure;
  const on = value?.kind === 'torque' ? value.on : null;
  return {
    name: figure.own ? figure.name : '',
    value: value === null ? '' : value.kind === 'text' ? value.text : String(value.typed.value),
    unit: unitToBegin(card, figure),
    thread: on?.thread ?? '',
    strength: on?.strength ?? '',
    seat: on?.seat ?? '',
    source: figure.source ?? '',
    paper: figure.paper?.id ?? '',
    files: [],
    note: figure.note,
  };
}

/** Reads the form's fields as the figure they describe. What was compared with its source is so no longer once it is changed. */
export function composeFigure(draft: FigureDraft, car: string, figure: FigureView): Result<RequestOf<'card.set'>> {
  const read = new FieldsRead();
  const unit = draft.unit === '' ? null : draft.unit;
  const on = { thread: textOrNull(threadText(draft.thread)), strength: textOrNull(draft.strength) as '8.8' | null, seat: textOrNull(draft.seat) as 'flat' | null };
  const value = unit === null ? draft.value : read.number('value', draft.value, '4.1');
  return read.whole({
    car,
    key: figure.key,
    name: figure.own ? draft.name : null,
    value,
    unit,
    ...(unit !== null && isTorque(unit) ? { ...on, ...jointOf(figure) } : {}),
    source: textOrNull(draft.source),
    paper: textOrNull(draft.paper),
    note: draft.note,
    sure: figure.sure && standsAs(figure, value, unit, on.thread),
  });
}

/** Whether a unit is one of torque, so that a thread belongs to it. */
export function isTorque(unit: string): boolean {
  return torqueUnitSchema.safeParse(unit).success;
}

/** A thread as it is written on paper. @example threadText('m12 × 1,5') //=> 'M12x1.5' */
export function threadText(typed: string): string {
  return typed.replace(/\s+/g, '').replace(/^m/, 'M').replace(/[×X*]/, 'x').replace(',', '.');
}

/** What a torque of one's own is on stays as it was said; of a known one the list says it. */
function jointOf({ own, value }: FigureView) {
  return own && value?.kind === 'torque' ? { joint: value.on.joint } : {};
}

function standsAs({ value: stands }: FigureView, value: number | string, unit: string | null, thread: string | null): boolean {
  if (stands === null) return false;
  return stands.kind === 'text' ? stands.text === value : stands.typed.value === value && stands.typed.unit === unit && (stands.kind !== 'torque' || stands.on.thread === thread);
}

/** The figure as it stands, stated again as compared with its source. */
export function comparedFigure(car: string, { key, name, own, value, source, paper, note }: FigureView): RequestOf<'card.set'> | null {
  if (value === null) return null;
  const typed = value.kind === 'text' ? { value: value.text, unit: null } : { value: value.typed.value, unit: value.typed.unit };
  const { joint, thread, strength, seat } = value.kind === 'torque' ? value.on : { joint: undefined, thread: null, strength: null, seat: null };
  return { car, key, name: own ? name : null, ...typed, source, paper: paper?.id ?? null, note, thread, strength, seat, sure: true, ...(joint === undefined ? {} : { joint }) };
}
