import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { LotView, PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface DiscardFormProps {
  readonly view: PartsView;
  readonly one: LotView;
  readonly onClose: () => void;
}

interface Draft {
  readonly quantity: string;
  readonly on: string;
  readonly where: string;
  readonly note: string;
}

/** Takes a lot off the shelf and keeps it for disposal. */
export function DiscardForm({ view, one, onClose }: DiscardFormProps) {
  const entry = useEntry({
    key: `lot.discard ${one.lot.id} ${one.left}`,
    start: { quantity: String(one.left), on: view.today as string, where: '', note: '' } satisfies Draft as Draft,
    send: (draft) => send(draft, one.lot.id),
    onDone: ({ undo }) => {
      note(tell('discard.done', { part: one.partName }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('discard.submit')} onCancel={onClose}>
      <p>{tell('discard.what')}</p>
      <FieldRow>
        <TextInput {...bindText(entry, 'quantity')} data-autofocus label={tell('lot.quantity', { unit: tell(`amount-unit.${(one.unit ?? 'each') as 'each'}`) })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'on')} max={view.today} label={tell('waste.on')} />
        <TextInput {...bindText(entry, 'where')} label={tell('waste.where')} autoComplete="off" />
      </FieldRow>
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, lot: string): Promise<Result<Changed<'lot.discard'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ lot, quantity: read.number('quantity', draft.quantity, '0.5'), on: read.date('on', draft.on), where: textOrNull(draft.where), note: draft.note });
  return whole.ok ? change('lot.discard', whole.value) : whole;
}
