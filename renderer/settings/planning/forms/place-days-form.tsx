import { NativeSelect, TextInput } from '@mantine/core';
import type { PlanningPlace } from '../../../../shared-core/views/planning-view.ts';
import { change } from '../../../ui/change.ts';
import { bindDate, bindText } from '../../../ui/form/bind.ts';
import { choices } from '../../../ui/form/choices.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { readStretch, startStretch } from './read-stretch.ts';

interface PlaceDaysFormProps {
  readonly place: PlanningPlace;
  /** The days to change; null: new ones. */
  readonly days: PlanningPlace['days'][number] | null;
  readonly onClose: () => void;
}

/** Days on which a place is closed against its habit, or open. */
export function PlaceDaysForm({ place, days, onClose }: PlaceDaysFormProps) {
  const entry = useEntry({
    key: `place-days.set ${place.id} ${days?.id ?? ''}`,
    start: { what: days?.open === true ? 'open' : 'closed', ...startStretch(days), reason: days?.reason ?? '' },
    send: async (draft) => {
      const read = readStretch(draft);
      return read.ok ? change('place-days.set', { ...(days === null ? {} : { id: days.id }), ...read.value, place: place.id, open: draft.what === 'open', reason: draft.reason }) : read;
    },
    onDone: ({ undo }) => {
      note(tell('place-days-form.saved', { place: place.name }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('place-days-form.submit')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'what', 'open')} data-autofocus label={tell('place-days-form.what')} data={choices('place-days-form.', ['closed', 'open'])} />
      <FieldRow>
        <DateField {...bindDate(entry, 'from')} label={tell('place-days-form.from')} />
        <DateField {...bindDate(entry, 'to')} label={tell('place-days-form.to')} description={tell('place-days-form.to-what')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'reason')} label={tell('place-days-form.reason')} autoComplete="off" />
    </EntryForm>
  );
}
