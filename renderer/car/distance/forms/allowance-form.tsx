import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../../ui/change.ts';
import { bindDate, bindText } from '../../../ui/form/bind.ts';
import { choices } from '../../../ui/form/choices.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { unitChoices } from '../../../ui/household-choices.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';

type Allowance = CarView['allowances'][number]['allowance'];

interface AllowanceFormProps {
  readonly view: CarView;
  /** The allowance to change, or null: a new one. */
  readonly allowance: Allowance | null;
  readonly onClose: () => void;
}

/** How much distance is allowed, by whom, and from when. */
export function AllowanceForm({ view: { car, today }, allowance, onClose }: AllowanceFormProps) {
  const entry = useEntry({
    key: `allowance ${car.id} ${allowance?.id ?? ''}`,
    start: draftOf(allowance, car.unit, today),
    send: (draft) => send(draft, allowance, car.id),
    onDone: (reply) => {
      note(tell('allowance.done', { car: car.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('allowance.submit')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'kind')} data-autofocus label={tell('allowance.kind')} data={choices('allowance.kind-', ['insurance', 'lease', 'warranty', 'other'])} />
        <TextInput {...bindText(entry, 'name')} label={tell('allowance.name')} placeholder={tell('allowance.name-example')} autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'value', 'distance')} label={tell('allowance.distance')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
        <NativeSelect {...bindText(entry, 'every')} label={tell('allowance.every')} data={choices('allowance.every-', ['year', 'term'])} />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'from')} label={tell('allowance.from')} description={tell('allowance.from-what')} />
        <DateField {...bindDate(entry, 'to')} label={tell('allowance.to')} description={tell('allowance.to-what')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'start', 'startReading')} label={tell('allowance.start')} description={tell('allowance.start-what')} inputMode="numeric" autoComplete="off" rightSection={tell(entry.draft.unit === 'mi' ? 'unit.mi' : 'unit.km')} />
    </EntryForm>
  );
}

function draftOf(allowance: Allowance | null, unit: string, today: string) {
  return {
    kind: (allowance?.kind ?? 'insurance') as string,
    name: allowance?.name ?? '',
    value: allowance?.distance.value.toString() ?? '',
    unit: (allowance?.distance.unit ?? unit) as string,
    every: (allowance?.every ?? 'year') as string,
    from: (allowance?.from ?? today) as string,
    to: (allowance?.to ?? '') as string,
    start: allowance?.startReading?.value.toString() ?? '',
  };
}

async function send(draft: ReturnType<typeof draftOf>, allowance: Allowance | null, car: string): Promise<Result<Changed<'allowance.set'>>> {
  const read = new FieldsRead();
  const unit = draft.unit as 'km';
  const from = read.date('from', draft.from);
  const whole = read.whole({
    car,
    ...(allowance === null ? {} : { id: allowance.id }),
    kind: draft.kind as Allowance['kind'],
    name: textOrNull(draft.name),
    distance: { value: read.number('distance', draft.value), unit },
    every: draft.every as Allowance['every'],
    to: read.dateOrNull('to', draft.to),
    startReading: read.distanceOrNull('startReading', draft.start, unit),
  });
  if (!whole.ok) return whole;
  return change('allowance.set', { ...whole.value, from: from as NonNullable<typeof from> });
}
