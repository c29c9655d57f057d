import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { FieldRow } from '../../ui/form/fields.tsx';
import { choices } from '../../ui/form/choices.ts';
import { tell } from '../../ui/words/tell.ts';
import { unitsOf } from '../card/figure-units.ts';
import { FigureChoice } from './figure-choice.tsx';
import { useEditor } from './editor-context.ts';
import type { TorqueDraft } from './sheet-draft.ts';

interface TorqueFieldsProps {
  readonly torque: TorqueDraft;
  readonly set: (change: Partial<TorqueDraft>) => void;
  readonly path: string;
  /** What is asked about it as it stands; null: nothing. */
  readonly question: string | null;
}

/** A torque: a figure of the car's data card, or the keeper's own with its thread, its class and where it comes from. */
export function TorqueFields({ torque, set, path, question }: TorqueFieldsProps) {
  if (torque.by === 'figure') return <FigureChoice label={tell('sheet-edit.torque')} kind="torque" value={torque} path={path} onChange={set} more={{ label: tell('sheet-edit.torque-own'), onChoose: () => set({ by: 'own', figure: '', name: '' }) }} />;
  return <OwnTorque torque={torque} set={set} path={path} question={question} />;
}

function OwnTorque({ torque, set, path, question }: TorqueFieldsProps) {
  const { entry } = useEditor();
  /** What was said of the number before holds of that number alone. */
  const anew = (some: Partial<TorqueDraft>) => set({ ...some, sure: false });
  return (
    <>
      <TextInput {...entry.at(`${path}.name`)} label={tell('sheet-edit.torque-name')} autoComplete="off" maxLength={80} value={torque.name} onChange={(event) => set({ name: event.currentTarget.value })} />
      <FieldRow>
        <TextInput {...entry.at(`${path}.typed.value`)} label={tell('figure-form.value')} inputMode="decimal" autoComplete="off" value={torque.value} onChange={(event) => anew({ value: event.currentTarget.value })} />
        <NativeSelect {...entry.at(`${path}.typed.unit`)} label={tell('figure-form.unit')} data={unitsOf('torque')} value={torque.unit} onChange={(event) => anew({ unit: event.currentTarget.value })} />
        <TextInput {...entry.at(`${path}.on.thread`)} label={tell('figure-form.thread')} placeholder={tell('figure-form.thread-example')} autoComplete="off" value={torque.thread} onChange={(event) => anew({ thread: event.currentTarget.value })} />
      </FieldRow>
      <FieldRow>
        <NativeSelect {...entry.at(`${path}.on.joint`)} label={tell('sheet-edit.joint')} data={choices('joint.', ['bolt', 'soft', 'spark-plug'])} value={torque.joint} onChange={(event) => anew({ joint: event.currentTarget.value })} />
        {torque.joint === 'spark-plug'
          ? <NativeSelect {...entry.at(`${path}.on.seat`)} label={tell('figure-form.seat')} data={[{ value: '', label: tell('seat.unsaid') }, ...choices('seat.', ['flat', 'conical'])]} value={torque.seat} onChange={(event) => anew({ seat: event.currentTarget.value })} />
          : <NativeSelect {...entry.at(`${path}.on.strength`)} label={tell('figure-form.strength')} data={[{ value: '', label: tell('strength.unsaid') }, ...choices('strength.', ['8.8', '10.9'])]} value={torque.strength} onChange={(event) => anew({ strength: event.currentTarget.value })} />}
        <TextInput {...entry.at(`${path}.source`)} label={tell('figure-form.source')} placeholder={tell('figure-form.source-example')} autoComplete="off" maxLength={120} value={torque.source} onChange={(event) => set({ source: event.currentTarget.value })} />
      </FieldRow>
      {(question !== null || torque.sure) && <Checkbox label={tell('sheet-edit.sure')} description={torque.sure ? undefined : question} checked={torque.sure} onChange={(event) => set({ sure: event.currentTarget.checked })} />}
    </>
  );
}
