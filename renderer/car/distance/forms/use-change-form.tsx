import { NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change } from '../../../ui/change.ts';
import { bindDate, bindText } from '../../../ui/form/bind.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { unitChoices } from '../../../ui/household-choices.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';

interface UseChangeFormProps {
  readonly view: CarView;
  /** The change of use to change, or null: a new one. */
  readonly useChange: CarView['useChanges'][number] | null;
  readonly onClose: () => void;
}

/** A day from which the car is used otherwise. */
export function UseChangeForm({ view: { car, today }, useChange, onClose }: UseChangeFormProps) {
  const expected = useChange?.declaredAYear ?? null;
  const entry = useEntry({
    key: `use-change ${car.id} ${useChange?.id ?? ''}`,
    start: { date: (useChange?.date ?? today) as string, value: expected?.value.toString() ?? '', unit: (expected?.unit ?? car.unit) as string, note: useChange?.note ?? '' },
    send: async (draft) => {
      const read = new FieldsRead();
      const date = read.date('date', draft.date);
      const declaredAYear = read.distanceOrNull('declaredAYear', draft.value, draft.unit as 'km');
      const whole = read.whole({ car: car.id, ...(useChange === null ? {} : { id: useChange.id }), declaredAYear, note: draft.note });
      if (!whole.ok) return whole;
      return change('use-change.set', { ...whole.value, date: date as NonNullable<typeof date> });
    },
    onDone: (reply) => {
      note(tell('use-change.done', { car: car.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('use-change.submit')} onCancel={onClose}>
      <DateField {...bindDate(entry, 'date')} data-autofocus label={tell('use-change.date')} description={tell('use-change.date-what')} />
      <FieldGroup legend={tell('use-change.expected')} hint={tell('use-change.expected-what')}>
        <FieldRow>
          <TextInput {...bindText(entry, 'value', 'declaredAYear')} label={tell('distance-form.distance')} inputMode="numeric" autoComplete="off" />
          <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
        </FieldRow>
      </FieldGroup>
      <TextInput {...bindText(entry, 'note')} label={tell('use-change.note')} placeholder={tell('use-change.note-example')} autoComplete="off" />
    </EntryForm>
  );
}
