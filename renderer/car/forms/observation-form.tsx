import { NativeSelect, Textarea } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface ObservationFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

interface Draft {
  readonly text: string;
  readonly severity: string;
  readonly date: string;
  readonly recheckOn: string;
}

/** Notes something seen that needs another look. */
export function ObservationForm({ view: { car, today }, onClose }: ObservationFormProps) {
  const entry = useEntry({
    key: `observation.note ${car.id}`,
    start: { text: '', severity: 'watch', date: today as string, recheckOn: '' } satisfies Draft as Draft,
    send: (draft) => send(draft, car.id),
    onDone: ({ undo }) => {
      note(tell('observation-form.done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('observation-form.submit')} onCancel={onClose}>
      <Textarea {...bindText(entry, 'text')} data-autofocus label={tell('observation-form.text')} rows={2} />
      <NativeSelect {...bindText(entry, 'severity')} label={tell('observation-form.severity')} data={choices('severity-choice.', ['watch', 'soon', 'unsafe'])} />
      <FieldRow>
        <DateField {...bindDate(entry, 'date')} max={today} label={tell('observation-form.date')} />
        <DateField {...bindDate(entry, 'recheckOn')} label={tell('observation-form.recheck')} />
      </FieldRow>
    </EntryForm>
  );
}

async function send(draft: Draft, car: string): Promise<Result<Changed<'observation.note'>>> {
  const read = new FieldsRead();
  const whole = read.whole({
    car,
    text: draft.text,
    severity: draft.severity as 'watch',
    date: read.date('date', draft.date),
    recheckOn: read.dateOrNull('recheckOn', draft.recheckOn),
  });
  return whole.ok ? change('observation.note', whole.value) : whole;
}
