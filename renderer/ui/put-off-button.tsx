import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import { change } from './change.ts';
import { bindDate, bindText } from './form/bind.ts';
import { DateField } from './form/date-field.tsx';
import { EntryForm } from './form/entry-form.tsx';
import { FieldRow } from './form/fields.tsx';
import { FieldsRead } from './form/read-fields.ts';
import { useEntry } from './form/use-entry.ts';
import { unitChoices } from './household-choices.ts';
import { note } from './notices/notice-store.ts';
import { SideSheet } from './side-sheet.tsx';
import { tell } from './words/tell.ts';

interface PutOffProps {
  readonly followUp: { readonly id: string; readonly text: string };
  /** The unit in which its car reads. */
  readonly unit: 'km' | 'mi';
}

/** Puts a follow-up off to another day or by a distance, asked for in a sheet at the side. */
export function PutOffButton({ followUp, unit }: PutOffProps) {
  const [opened, setOpened] = useState(false);
  return (
    <>
      <Button size="compact-sm" variant="subtle" aria-label={tell('put-off.open-for', { text: followUp.text })} onClick={() => setOpened(true)}>{tell('put-off.open')}</Button>
      <SideSheet title={tell('put-off.title', { text: followUp.text })} opened={opened} onClose={() => setOpened(false)}>
        <PutOffForm followUp={followUp} unit={unit} onClose={() => setOpened(false)} />
      </SideSheet>
    </>
  );
}

function PutOffForm({ followUp, unit, onClose }: PutOffProps & { readonly onClose: () => void }) {
  const entry = useEntry({
    key: `follow-up.put-off ${followUp.id}`,
    start: { dueOn: '', distance: '', unit: unit as string, note: '' },
    send: async (draft) => {
      const read = new FieldsRead();
      const whole = read.whole({ followUp: followUp.id, dueOn: read.dateOrNull('dueOn', draft.dueOn), after: read.distanceOrNull('after', draft.distance, draft.unit as 'km'), note: draft.note });
      return whole.ok ? change('follow-up.put-off', whole.value) : whole;
    },
    onDone: ({ undo }) => {
      note(tell('put-off.done', { text: followUp.text }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('put-off.submit')} onCancel={onClose}>
      <DateField {...bindDate(entry, 'dueOn')} data-autofocus label={tell('put-off.on')} />
      <FieldRow>
        <TextInput {...bindText(entry, 'distance', 'after')} label={tell('put-off.distance')} description={tell('follow-up-form.distance-what')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('put-off.why')} maxLength={300} autoComplete="off" />
    </EntryForm>
  );
}
