import { NativeSelect, TextInput } from '@mantine/core';
import type { PlanningCar } from '../../../../shared-core/views/planning-view.ts';
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

interface CarDaysFormProps {
  readonly car: PlanningCar;
  /** The days to change; null: new ones. */
  readonly days: PlanningCar['days'][number] | null;
  readonly onClose: () => void;
}

/** Days on which a car is needed, or away. */
export function CarDaysForm({ car, days, onClose }: CarDaysFormProps) {
  const entry = useEntry({
    key: `car-days.set ${car.id} ${days?.id ?? ''}`,
    start: { why: days?.why ?? 'needed', ...startStretch(days), note: days?.note ?? '' },
    send: async (draft) => {
      const read = readStretch(draft);
      return read.ok ? change('car-days.set', { ...(days === null ? {} : { id: days.id }), ...read.value, car: car.id, why: draft.why === 'away' ? 'away' : 'needed', note: draft.note }) : read;
    },
    onDone: ({ undo }) => {
      note(tell('car-days-form.saved', { car: car.name }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('car-days-form.submit')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'why')} data-autofocus label={tell('car-days-form.why')} data={choices('car-days-form.', ['needed', 'away'])} />
      <FieldRow>
        <DateField {...bindDate(entry, 'from')} label={tell('car-days-form.from')} />
        <DateField {...bindDate(entry, 'to')} label={tell('car-days-form.to')} description={tell('car-days-form.to-what')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('car-days-form.note')} autoComplete="off" />
    </EntryForm>
  );
}
