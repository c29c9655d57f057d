import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change } from '../../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../../ui/form/bind.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { unitChoicesOf, type MeasuredUnit } from '../value-words.ts';

interface CorrectFormProps {
  readonly view: CarView;
  readonly measurement: CarView['measured'][number]['points'][number]['measurement'];
  readonly onClose: () => void;
}

/** Corrects one measurement; what was entered first stays in the journal. */
export function CorrectForm({ view, measurement, onClose }: CorrectFormProps) {
  const { id, typed, date, fresh, gauge, note: remark, what } = measurement;
  const entry = useEntry({
    key: `measurement.correct ${id}`,
    start: { value: String(typed.value), unit: typed.unit as string, date: date as string, fresh, gauge: gauge ?? '', note: remark },
    send: async (draft) => {
      const read = new FieldsRead();
      const whole = read.whole({
        id, typed: { value: read.number('typed.value', draft.value), unit: draft.unit as MeasuredUnit }, date: read.date('date', draft.date), fresh: draft.fresh, gauge: textOrNull(draft.gauge), note: draft.note,
      });
      return whole.ok ? underItsField(await change('measurement.correct', whole.value)) : whole;
    },
    onDone: ({ undo }) => {
      note(tell('correct-form.done'), undo);
      onClose();
    },
  });
  const units = unitChoicesOf(what);
  return (
    <EntryForm entry={entry} submit={tell('correct-form.submit')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'value', 'typed.value')} data-autofocus label={tell('correct-form.value')} autoComplete="off" />
        {units.length > 1 && <NativeSelect {...bindText(entry, 'unit', 'typed.unit')} label={tell('measure-form.unit')} data={units} />}
        <DateField {...bindDate(entry, 'date')} max={view.today} label={tell('measure-form.date')} />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'fresh')} label={tell('correct-form.fresh')} description={tell('measure-form.fresh-what')} />
      <FieldRow>
        <TextInput {...bindText(entry, 'gauge')} label={tell('measure-form.gauge')} autoComplete="off" />
        <TextInput {...bindText(entry, 'note')} label={tell('correct-form.note')} autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}

/** The core names the value and the unit as they stand in a measurement that is added. */
function underItsField<Answer extends { readonly ok: boolean }>(result: Answer): Answer {
  const refusal = 'refusal' in result ? (result.refusal as { readonly path?: readonly (string | number)[] }) : null;
  const field = refusal?.path?.[0];
  return field === 'value' || field === 'unit' ? { ...result, refusal: { ...refusal, path: ['typed', field] } } : result;
}
