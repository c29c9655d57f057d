import { TextInput } from '@mantine/core';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change } from '../../../ui/change.ts';
import { bindDate, bindText } from '../../../ui/form/bind.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';

interface LayUpFormProps {
  readonly view: CarView;
  /** The lay-up to change, or null: a new one. */
  readonly layUp: CarView['layUps'][number] | null;
  /** The car is back on the road: the last day of rest is asked for first. */
  readonly ending: boolean;
  readonly onClose: () => void;
}

/** A stretch of days in which the car rests, once. */
export function LayUpForm({ view: { car, today }, layUp, ending, onClose }: LayUpFormProps) {
  const entry = useEntry({
    key: `lay-up ${car.id} ${layUp?.id ?? ''} ${ending ? 'end' : ''}`,
    start: { from: (layUp?.from ?? today) as string, to: (ending ? today : (layUp?.to ?? '')) as string, note: layUp?.note ?? '' },
    send: async (draft) => {
      const read = new FieldsRead();
      const from = read.date('from', draft.from);
      const whole = read.whole({ car: car.id, ...(layUp === null ? {} : { id: layUp.id }), to: read.dateOrNull('to', draft.to), note: draft.note });
      if (!whole.ok) return whole;
      return change('lay-up.set', { ...whole.value, from: from as NonNullable<typeof from> });
    },
    onDone: (reply) => {
      note(tell(reply.layUp.to === null ? 'lay-up.done-open' : 'lay-up.done', { car: car.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('lay-up.submit')} onCancel={onClose}>
      <FieldRow>
        <DateField {...bindDate(entry, 'from')} data-autofocus={!ending} label={tell('lay-up.from')} description={tell('lay-up.from-what')} />
        <DateField {...bindDate(entry, 'to')} data-autofocus={ending} label={tell('lay-up.to')} description={tell('lay-up.to-what')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('reading-form.note')} autoComplete="off" />
    </EntryForm>
  );
}
