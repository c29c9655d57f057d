import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import { useState } from 'react';
import { change } from './change.ts';
import { bindDate, bindText } from './form/bind.ts';
import { choices } from './form/choices.ts';
import { DateField } from './form/date-field.tsx';
import { EntryForm } from './form/entry-form.tsx';
import { FieldsRead } from './form/read-fields.ts';
import { useEntry } from './form/use-entry.ts';
import { note } from './notices/notice-store.ts';
import { SideSheet } from './side-sheet.tsx';
import { tell } from './words/tell.ts';

interface AmendProps {
  readonly seen: { readonly id: string; readonly text: string; readonly severity: 'watch' | 'soon' | 'unsafe'; readonly recheckOn: string | null };
  /** Large, for hands at work. */
  readonly large?: boolean;
}

/** Corrects what was seen in a sheet at the side: its words, how grave it is, when it is looked at again. */
export function AmendObservation({ seen, large = false }: AmendProps) {
  const [opened, setOpened] = useState(false);
  return (
    <>
      <Button {...(large ? { size: 'lg', h: 64 } : { size: 'compact-sm' })} variant={large ? 'default' : 'subtle'} aria-label={tell('observations.amend-for', { text: seen.text })} onClick={() => setOpened(true)}>{tell('observations.amend')}</Button>
      <SideSheet title={tell('observations.amend-for', { text: seen.text })} opened={opened} onClose={() => setOpened(false)}>
        <AmendForm key={JSON.stringify(seen)} seen={seen} onClose={() => setOpened(false)} />
      </SideSheet>
    </>
  );
}

function AmendForm({ seen, onClose }: Pick<AmendProps, 'seen'> & { readonly onClose: () => void }) {
  const entry = useEntry({
    key: `observation.amend ${JSON.stringify(seen)}`,
    start: { text: seen.text, severity: seen.severity as string, recheckOn: seen.recheckOn ?? '', why: '' },
    send: async (draft) => {
      const read = new FieldsRead();
      const whole = read.whole({ id: seen.id, text: draft.text, severity: draft.severity as 'watch', recheckOn: read.dateOrNull('recheckOn', draft.recheckOn), why: draft.why });
      return whole.ok ? change('observation.amend', whole.value) : whole;
    },
    onDone: ({ observation, undo }) => {
      note(tell('observations.amended', { text: observation.text }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('observations.amend-submit')} onCancel={onClose}>
      <Textarea {...bindText(entry, 'text')} data-autofocus label={tell('observation-form.text')} rows={2} maxLength={300} />
      <NativeSelect {...bindText(entry, 'severity')} label={tell('observation-form.severity')} data={choices('severity-choice.', ['watch', 'soon', 'unsafe'])} />
      <DateField {...bindDate(entry, 'recheckOn')} label={tell('observation-form.recheck')} />
      <TextInput {...bindText(entry, 'why')} label={tell('observations.why')} maxLength={300} autoComplete="off" />
    </EntryForm>
  );
}
