import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface ObligationFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

const KINDS = ['roadworthiness-test', 'road-tax', 'insurance', 'warranty-end', 'printed-expiry', 'other'] as const;
type Kind = (typeof KINDS)[number];

const START = { kind: 'roadworthiness-test', name: '', lastValidDay: '', months: '12', keepsDate: false, noticeDays: '14', price: '' };
type Draft = typeof START;

/** A dated duty of the car. */
export function ObligationForm({ view: { car, currency }, onClose }: ObligationFormProps) {
  const entry = useEntry({
    key: `obligation.add ${car.id}`,
    start: START,
    send: (draft) => send(draft, car.id, currency),
    onDone: ({ obligation, undo }) => {
      note(tell('obligation-form.added', { name: obligation.name ?? tell(`kind.${obligation.kind}`) }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('obligation-form.submit')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'kind')} data-autofocus label={tell('obligation-form.kind')} data={choices('kind.', KINDS)} />
      <TextInput {...bindText(entry, 'name')} label={tell('obligation-form.name')} autoComplete="off" />
      <FieldRow>
        <DateField {...bindDate(entry, 'lastValidDay')} label={tell('obligation-form.last-valid-day')} />
        <TextInput {...bindText(entry, 'months')} label={tell('obligation-form.months')} description={tell('obligation-form.months-what')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'keepsDate')} label={tell('obligation-form.keeps-date')} />
      <FieldRow>
        <TextInput {...bindText(entry, 'noticeDays')} label={tell('obligation-form.notice')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'price')} label={tell('obligation-form.price', { currency })} inputMode="decimal" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}

async function send(draft: Draft, car: string, currency: string): Promise<Result<Changed<'obligation.add'>>> {
  const read = new FieldsRead();
  const lastValidDay = read.date('lastValidDay', draft.lastValidDay);
  const whole = read.whole({
    car,
    kind: draft.kind as Kind,
    name: textOrNull(draft.name),
    months: read.wholeOrNull('months', draft.months),
    keepsDate: draft.keepsDate,
    noticeDays: read.wholeOrNull('noticeDays', draft.noticeDays) ?? 14,
    price: read.moneyOrNull('price', draft.price, currency),
  });
  if (!whole.ok) return whole;
  return change('obligation.add', { ...whole.value, lastValidDay: lastValidDay as NonNullable<typeof lastValidDay> });
}
