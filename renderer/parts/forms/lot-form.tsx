import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface LotFormProps {
  readonly view: PartsView;
  readonly onClose: () => void;
}

interface Draft {
  readonly part: string;
  readonly quantity: string;
  readonly receivedOn: string;
  readonly openedOn: string;
  readonly expires: string;
  readonly keepsOpenedDays: string;
  readonly where: string;
  readonly paid: string;
}

/** Puts something on the shelf that no order here brought. */
export function LotForm({ view, onClose }: LotFormProps) {
  const { currency, today } = view;
  const { byName } = useWords();
  const parts = view.parts.filter((one) => one.part.contains.length === 0).sort((a, b) => byName(a.part.name, b.part.name));
  const entry = useEntry({
    key: 'lot.set',
    start: { part: parts[0]?.part.id ?? '', quantity: '1', receivedOn: today as string, openedOn: '', expires: '', keepsOpenedDays: '', where: '', paid: '' } satisfies Draft as Draft,
    send: (draft) => send(draft, currency),
    onDone: ({ undo }) => {
      note(tell('lot.done'), undo);
      onClose();
    },
  });
  const unit = parts.find((one) => one.part.id === entry.draft.part)?.unit ?? 'each';
  if (parts.length === 0) return <p>{tell('lot.no-part')}</p>;
  return (
    <EntryForm entry={entry} submit={tell('lot.submit')} onCancel={onClose}>
      <NativeSelect {...bindText(entry, 'part')} data-autofocus label={tell('line.part')} data={parts.map(({ part }) => ({ value: part.id, label: part.name }))} />
      <FieldRow>
        <TextInput {...bindText(entry, 'quantity')} label={tell('lot.quantity', { unit: tell(`amount-unit.${unit as 'each'}`) })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'receivedOn')} max={today} label={tell('lot.received')} />
        <TextInput {...bindText(entry, 'where')} label={tell('lot.where')} autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'expires')} label={tell('lot.expires')} />
        <DateField {...bindDate(entry, 'openedOn')} max={today} label={tell('lot.opened')} />
        <TextInput {...bindText(entry, 'keepsOpenedDays')} label={tell('lot.keeps')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <TextInput {...bindText(entry, 'paid', 'paidMinor')} label={tell('lot.paid', { currency })} inputMode="decimal" autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, currency: string): Promise<Result<Changed<'lot.set'>>> {
  const read = new FieldsRead();
  const receivedOn = read.date('receivedOn', draft.receivedOn);
  const whole = read.whole({
    part: draft.part, quantity: read.number('quantity', draft.quantity, '4.5'), openedOn: read.dateOrNull('openedOn', draft.openedOn), expires: read.dateOrNull('expires', draft.expires),
    keepsOpenedDays: read.wholeOrNull('keepsOpenedDays', draft.keepsOpenedDays), where: textOrNull(draft.where), paidMinor: read.moneyOrNull('paidMinor', draft.paid, currency),
  });
  if (!whole.ok || receivedOn === undefined) return whole.ok ? { ok: false, refusal: { code: 'no-date', values: {}, path: ['receivedOn'] } } : whole;
  return change('lot.set', { ...whole.value, receivedOn });
}
