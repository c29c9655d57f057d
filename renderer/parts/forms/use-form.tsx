import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { LotView, PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { useCars } from '../../ui/use-cars.ts';

interface UseFormProps {
  readonly view: PartsView;
  readonly one: LotView;
  readonly onClose: () => void;
}

interface Draft {
  readonly quantity: string;
  readonly why: string;
  readonly car: string;
  readonly on: string;
  readonly note: string;
  readonly sure: boolean;
}

/** Takes something of a lot: used outside a record of work, as a top-up is, or lost. */
export function UseForm({ view, one, onClose }: UseFormProps) {
  const cars = useCars();
  const entry = useEntry({
    key: `lot.use ${one.lot.id} ${one.left}`,
    start: { quantity: '', why: 'used', car: '', on: view.today as string, note: '', sure: false } satisfies Draft as Draft,
    send: (draft) => send(draft, one.lot.id),
    onDone: ({ left, undo }) => {
      note(tell('use.done', { part: one.partName, left: amountWords(left, one.unit) }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('use.submit')} onCancel={onClose}>
      <p>{tell('use.what', { left: amountWords(one.left, one.unit) })}</p>
      <FieldRow>
        <TextInput {...bindText(entry, 'quantity')} data-autofocus label={tell('lot.quantity', { unit: tell(`amount-unit.${(one.unit ?? 'each') as 'each'}`) })} inputMode="decimal" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'why')} label={tell('use.why')} data={choices('use.why-', ['used', 'lost'])} />
      </FieldRow>
      <FieldRow>
        {entry.draft.why === 'used' && <NativeSelect {...bindText(entry, 'car')} label={tell('use.car')} data={[{ value: '', label: tell('use.no-car') }, ...cars]} />}
        <DateField {...bindDate(entry, 'on')} max={view.today} label={tell('use.on')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
      <Checkbox {...bindTick(entry, 'sure')} label={tell('use.sure')} />
    </EntryForm>
  );
}

async function send(draft: Draft, lot: string): Promise<Result<Changed<'lot.use'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ lot, quantity: read.number('quantity', draft.quantity, '0.5'), why: draft.why as 'used', car: draft.why === 'used' && draft.car !== '' ? draft.car : null, on: read.date('on', draft.on), note: draft.note, sure: draft.sure });
  return whole.ok ? change('lot.use', whole.value) : whole;
}
