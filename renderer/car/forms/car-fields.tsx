import { NativeSelect, TextInput } from '@mantine/core';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import type { Entry } from '../../ui/form/use-entry.ts';
import { unitChoices } from '../../ui/household-choices.ts';
import { tell } from '../../ui/words/tell.ts';
import type { CarDraft } from './car-draft.ts';
import { MonthsField } from './months-field.tsx';

interface CarFieldsProps {
  readonly entry: Entry<CarDraft>;
}

/** What a car is called, what it is, and since when. */
export function CarFields({ entry }: CarFieldsProps) {
  return (
    <>
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
    </>
  );
}

/** What can follow later. */
export function MoreCarFields({ entry }: CarFieldsProps) {
  return (
    <MoreFields>
      <FieldRow>
        <TextInput {...bindText(entry, 'declared', 'declaredAYear')} label={tell('car-form.declared')} description={tell('car-form.declared-what')} inputMode="numeric" autoComplete="off" rightSection={tell(entry.draft.unit === 'mi' ? 'unit.mi' : 'unit.km')} />
        <TextInput {...bindText(entry, 'registration')} label={tell('car-form.registration')} autoComplete="off" />
      </FieldRow>
      <TextInput {...bindText(entry, 'vin')} label={tell('car-form.vin')} autoComplete="off" />
      <NativeSelect {...bindText(entry, 'use')} label={tell('car-form.use')} data={choices('car-form.use-', ['everyday', 'hobby'])} />
      <MonthsField place={entry.at('laidUpMonths')} months={entry.draft.laidUpMonths} onChange={(laidUpMonths) => entry.set({ laidUpMonths })} />
    </MoreFields>
  );
}
