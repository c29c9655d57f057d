import { NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useHousehold } from '../../ui/household.tsx';
import { unitChoices } from '../../ui/household-choices.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { carDraft, sendCar, severeChoices } from './car-draft.ts';
import { MonthsField } from './months-field.tsx';

interface CarFormProps {
  /** The car to change, or null: a new one. */
  readonly car: CarView['car'] | null;
  readonly onDone: (id: string) => void;
  readonly onCancel?: () => void;
}

/** What is known of a car. A name is enough to begin with. */
export function CarForm({ car, onDone, onCancel }: CarFormProps) {
  const household = useHousehold();
  const entry = useEntry({
    key: car === null ? 'car.add' : `car.change ${car.id}`,
    start: carDraft(car, household.unit),
    send: (draft) => sendCar(draft, car),
    onDone: (reply) => {
      note(tell(car === null ? 'car-form.added' : 'car-form.changed', { car: reply.car.name }), reply.undo);
      onDone(reply.car.id);
    },
  });
  return (
    <EntryForm entry={entry} submit={tell(car === null ? 'car-form.add' : 'car-form.save')} {...(onCancel === undefined ? {} : { onCancel })}>
      <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('car-form.name')} description={tell('car-form.name-what')} autoComplete="off" />
      <FieldRow>
        <TextInput {...bindText(entry, 'description')} label={tell('car-form.description')} placeholder={tell('car-form.description-example')} autoComplete="off" />
        <TextInput {...bindText(entry, 'year')} label={tell('car-form.year')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'power')} label={tell('car-form.power')} data={choices('power.', ['petrol', 'diesel', 'hybrid', 'electric', 'other'])} />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('car-form.unit')} data={unitChoices()} />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'firstRegistered')} label={tell('car-form.first-registered')} description={tell('car-form.first-registered-what')} />
        <DateField {...bindDate(entry, 'keptSince')} label={tell('car-form.kept-since')} description={tell('car-form.kept-since-what')} />
      </FieldRow>
      <MoreFields>
        <FieldRow>
          <TextInput {...bindText(entry, 'declared', 'declaredAYear')} label={tell('car-form.declared')} description={tell('car-form.declared-what')} inputMode="numeric" autoComplete="off" rightSection={tell(entry.draft.unit === 'mi' ? 'unit.mi' : 'unit.km')} />
          <TextInput {...bindText(entry, 'registration')} label={tell('car-form.registration')} autoComplete="off" />
        </FieldRow>
        <TextInput {...bindText(entry, 'vin')} label={tell('car-form.vin')} autoComplete="off" />
        <NativeSelect {...bindText(entry, 'use')} label={tell('car-form.use')} data={choices('car-form.use-', ['everyday', 'hobby'])} />
        <NativeSelect {...bindText(entry, 'severeUse')} label={tell('car-form.severe')} description={tell('car-form.severe-what')} data={severeChoices(entry.draft.severeUse)} />
        <MonthsField place={entry.at('laidUpMonths')} months={entry.draft.laidUpMonths} onChange={(laidUpMonths) => entry.set({ laidUpMonths })} />
      </MoreFields>
    </EntryForm>
  );
}
