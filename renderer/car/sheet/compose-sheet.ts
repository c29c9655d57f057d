import type { Result } from '../../../shared-core/result/result.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { threadText } from '../card/figure-draft.ts';
import type { FluidDraft, FollowUpDraft, RefDraft, SheetDraft, SheetRequest, StepDraft, TorqueDraft } from './sheet-draft.ts';

type NewStep = SheetRequest['steps'][number];
type NewTorque = NonNullable<NewStep['torques']>[number];

/** Reads the form as the sheet that it describes; what cannot be read is refused at its field. Empty lines of lists are left out. */
export function composeSheet(draft: SheetDraft, item: string): Result<SheetRequest> {
  const read = new FieldsRead();
  if (draft.steps.length === 0) read.refuse('steps', 'sheet-without-steps');
  return read.whole({
    item,
    steps: draft.steps.map((step, at) => composeStep(read, step, `steps.${at}`)),
    hazards: [...draft.hazards],
    checks: texts(draft.checks),
    reset: textOrNull(draft.reset),
    followUps: draft.followUps.map((one, at) => composeFollowUp(read, one, `followUps.${at}`)),
    note: draft.note,
  });
}

function composeStep(read: FieldsRead, step: StepDraft, path: string): NewStep {
  const { id, text, turn, hazards, disposal, accessWay, accessName, measure, measureName, measurePlace } = step;
  return {
    ...(id === null ? {} : { id }),
    text, turn,
    access: accessWay === '' ? null : { name: accessName, way: accessWay },
    torques: step.torques.map((one, at) => composeTorque(read, one, `${path}.torques.${at}`)),
    fluids: step.fluids.map((one, at) => composeFluid(read, one, `${path}.fluids.${at}`)),
    figures: step.figures.map((one, at) => composeRef(read, one, `${path}.figures.${at}`)),
    tools: texts(step.tools),
    measure: measure === '' ? null : { kind: measure as 'tread', name: textOrNull(measureName), place: textOrNull(measurePlace) as 'front' | null },
    hazards: [...hazards], disposal: [...disposal],
  };
}

function composeTorque(read: FieldsRead, torque: TorqueDraft, path: string): NewTorque {
  if (torque.by === 'figure') return { by: 'figure', ...composeRef(read, torque, path) };
  const { name, value, unit, joint, thread, strength, seat, source, sure } = torque;
  return {
    by: 'own', name, source, sure,
    typed: { value: read.number(`${path}.typed.value`, value, '25'), unit: unit as 'Nm' },
    on: { joint: joint as 'bolt', thread: textOrNull(threadText(thread)), strength: textOrNull(strength) as '8.8' | null, seat: textOrNull(seat) as 'flat' | null },
  };
}

function composeFluid(read: FieldsRead, { name, specification, quantity }: FluidDraft, path: string) {
  const ref = (one: RefDraft, field: string) => (one.figure === '' ? null : composeRef(read, one, `${path}.${field}`));
  return { name, specification: ref(specification, 'specification'), quantity: ref(quantity, 'quantity') };
}

function composeRef(read: FieldsRead, { figure, name }: RefDraft, path: string) {
  if (figure === '') read.refuse(`${path}.figure`, 'choose-figure');
  return { figure, name: textOrNull(name) };
}

function composeFollowUp(read: FieldsRead, { text, days, distance, unit }: FollowUpDraft, path: string) {
  const [inDays, after] = [read.wholeOrNull(`${path}.days`, days), read.distanceOrNull(`${path}.distance`, distance, unit === 'mi' ? 'mi' : 'km')];
  if (inDays === null && after === null) read.refuse(`${path}.days`, 'follow-up-without-when');
  if (inDays === 0) read.refuse(`${path}.days`, 'follow-up-rule-no-days');
  if (after?.value === 0) read.refuse(`${path}.distance.value`, 'follow-up-no-distance');
  return { text, days: inDays, distance: after };
}

function texts(lines: readonly { readonly text: string }[]): string[] {
  return lines.map((line) => line.text).filter((text) => text.trim() !== '');
}
