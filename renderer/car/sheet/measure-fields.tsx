import { NativeSelect, TextInput } from '@mantine/core';
import { choices } from '../../ui/form/choices.ts';
import { FieldRow } from '../../ui/form/fields.tsx';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import type { StepDraft } from './sheet-draft.ts';

interface MeasureFieldsProps {
  readonly step: StepDraft;
  readonly set: (change: Partial<StepDraft>) => void;
  readonly path: string;
}

/** What is measured at a step, where on the car, and what it is called. */
export function MeasureFields({ step, set, path }: MeasureFieldsProps) {
  const { entry } = useEditor();
  const kinds = choices('measured.', ['tread', 'pad', 'disc', 'battery-voltage', 'battery-capacity', 'brake-fluid-moisture', 'coolant-protection', 'belt', 'other']);
  const places = choices('measured-place.', ['front-left', 'front-right', 'rear-left', 'rear-right', 'front', 'rear', 'spare']);
  return (
    <FieldRow>
      <NativeSelect {...entry.at(`${path}.kind`)} label={tell('sheet-edit.measure-what')} data={[{ value: '', label: tell('item-measure.nothing') }, ...kinds]} value={step.measure} onChange={(event) => set({ measure: event.currentTarget.value })} />
      {step.measure !== '' && <NativeSelect {...entry.at(`${path}.place`)} label={tell('sheet-edit.measure-place')} data={[{ value: '', label: tell('measured-place.none') }, ...places]} value={step.measurePlace} onChange={(event) => set({ measurePlace: event.currentTarget.value })} />}
      {step.measure !== '' && <TextInput {...entry.at(`${path}.name`)} label={tell(step.measure === 'other' ? 'sheet-edit.measure-name' : 'sheet-edit.measure-name-free')} autoComplete="off" maxLength={60} value={step.measureName} onChange={(event) => set({ measureName: event.currentTarget.value })} />}
    </FieldRow>
  );
}
