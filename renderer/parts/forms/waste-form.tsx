import { NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface WasteFormProps {
  readonly view: PartsView;
  /** What stands, or null: something new. */
  readonly now: PartsView['waste'][number] | null;
  readonly onClose: () => void;
}

interface Draft {
  readonly what: string;
  readonly quantity: string;
  readonly unit: string;
  readonly since: string;
  readonly where: string;
  readonly note: string;
}

/** Writes down something kept to be disposed of rightly. */
export function WasteForm({ view, now, onClose }: WasteFormProps) {
  const entry = useEntry({
    key: `waste.keep ${now?.id ?? ''}`,
    start: { what: now?.what ?? '', quantity: now?.quantity?.toString() ?? '', unit: now?.unit ?? 'litre', since: now?.since ?? (view.today as string), where: now?.where ?? '', note: now?.note ?? '' } satisfies Draft as Draft,
    send: (draft) => send(draft, now?.id ?? null),
    onDone: ({ undo }) => {
      note(tell('waste.done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('waste.submit')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'what')} data-autofocus label={tell('waste.what')} placeholder={tell('waste.what-example')} autoComplete="off" />
      <FieldRow>
        <TextInput {...bindText(entry, 'quantity')} label={tell('waste.quantity')} inputMode="decimal" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('specification.unit')} data={choices('amount-unit.', ['each', 'litre', 'kilogram', 'metre', 'set'])} />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'since')} max={view.today} label={tell('waste.on')} />
        <TextInput {...bindText(entry, 'where')} label={tell('waste.where')} autoComplete="off" />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, id: string | null): Promise<Result<Changed<'waste.keep'>>> {
  const read = new FieldsRead();
  const quantity = read.numberOrNull('quantity', draft.quantity);
  const whole = read.whole({ ...(id === null ? {} : { id }), what: draft.what, quantity, unit: quantity === null ? null : (draft.unit as 'litre'), since: read.date('since', draft.since), where: textOrNull(draft.where), note: draft.note });
  return whole.ok ? change('waste.keep', whole.value) : whole;
}
