import { NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { unitChoices } from '../../ui/household-choices.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface FollowUpFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

/** In a week, unless another time is typed: what was missed is to be seen to soon. */
const USUAL_DAYS = '7';

/** Something to be looked at again: its words and Enter are enough. */
export function FollowUpForm({ view: { car, items, today }, onClose }: FollowUpFormProps) {
  const entry = useEntry({
    key: `follow-up.add ${car.id}`,
    start: { text: '', days: USUAL_DAYS, distance: '', unit: car.unit as string, dueOn: '', madeOn: today as string, item: '', note: '' },
    send: (draft) => send(draft, car.id),
    onDone: ({ undo }) => {
      note(tell('follow-up-form.done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('follow-up-form.submit')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'text')} data-autofocus label={tell('follow-up-form.text')} placeholder={tell('follow-up-form.text-example')} autoComplete="off" />
      <FieldRow>
        <TextInput {...bindText(entry, 'days')} label={tell('follow-up-form.days')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'distance', 'after')} label={tell('follow-up-form.distance')} description={tell('follow-up-form.distance-what')} inputMode="numeric" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('reading-form.unit')} data={unitChoices()} />
      </FieldRow>
      <MoreFields>
        <FieldRow>
          <DateField {...bindDate(entry, 'dueOn')} label={tell('follow-up-form.on')} />
          <DateField {...bindDate(entry, 'madeOn')} max={today} label={tell('follow-up-form.made')} />
        </FieldRow>
        <NativeSelect {...bindText(entry, 'item')} label={tell('follow-up-form.item')} data={[{ value: '', label: tell('follow-up-form.no-item') }, ...items.map(({ item }) => ({ value: item.id, label: item.name }))]} />
        <Textarea {...bindText(entry, 'note')} label={tell('follow-up-form.note')} rows={2} />
      </MoreFields>
    </EntryForm>
  );
}

type Draft = Readonly<Record<'text' | 'days' | 'distance' | 'unit' | 'dueOn' | 'madeOn' | 'item' | 'note', string>>;

async function send(draft: Draft, car: string): Promise<Result<Changed<'follow-up.add'>>> {
  const read = new FieldsRead();
  const dueOn = read.dateOrNull('dueOn', draft.dueOn);
  const whole = read.whole({
    car,
    text: draft.text,
    dueOn,
    days: draft.dueOn === '' ? read.wholeOrNull('days', draft.days) : null,
    after: read.distanceOrNull('after', draft.distance, draft.unit as 'km'),
    madeOn: read.date('madeOn', draft.madeOn),
    item: draft.item === '' ? null : draft.item,
    note: draft.note,
  });
  return whole.ok ? change('follow-up.add', whole.value) : whole;
}
