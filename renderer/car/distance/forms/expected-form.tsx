import { NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change } from '../../../ui/change.ts';
import { bindText } from '../../../ui/form/bind.ts';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { unitChoices } from '../../../ui/household-choices.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { MonthsField } from '../../forms/months-field.tsx';

interface ExpectedFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

interface Draft {
  readonly value: string;
  readonly unit: string;
  readonly months: readonly number[];
}

/** What the keeper expects of a car's use: its distance a year, and the months in which it sleeps. */
export function ExpectedForm({ view: { car }, onClose }: ExpectedFormProps) {
  const { declaredAYear, laidUpMonths } = car;
  const entry = useEntry({
    key: `expected ${car.id}`,
    start: { value: declaredAYear?.value.toString() ?? '', unit: declaredAYear?.unit ?? car.unit, months: laidUpMonths } satisfies Draft as Draft,
    send: async (draft) => {
      const read = new FieldsRead();
      const whole = read.whole({ id: car.id, declaredAYear: read.distanceOrNull('declaredAYear', draft.value, draft.unit as 'km'), laidUpMonths: [...draft.months] });
      return whole.ok ? change('car.change', whole.value) : whole;
    },
    onDone: (reply) => {
      note(tell('expected.done', { car: car.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('expected.submit')} onCancel={onClose}>
      <FieldGroup legend={tell('car-form.declared')} hint={tell('expected.what')}>
        <FieldRow>
          <TextInput {...bindText(entry, 'value', 'declaredAYear')} data-autofocus label={tell('distance-form.distance')} inputMode="numeric" autoComplete="off" />
          <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
        </FieldRow>
      </FieldGroup>
      <MonthsField place={entry.at('laidUpMonths')} months={entry.draft.months} onChange={(months) => entry.set({ months })} />
    </EntryForm>
  );
}
