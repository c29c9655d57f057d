import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { LotView, PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface OpenedFormProps {
  readonly view: PartsView;
  readonly one: LotView;
  readonly onClose: () => void;
}

/** Says when a lot was opened, and how long it keeps from then on. */
export function OpenedForm({ view, one, onClose }: OpenedFormProps) {
  const entry = useEntry({
    key: `lot.open ${one.lot.id}`,
    start: { on: one.openedOn ?? (view.today as string), keeps: one.lot.keepsOpenedDays?.toString() ?? '' },
    send: (draft) => send(draft, one.lot.id),
    onDone: ({ undo }) => {
      note(tell('opened.done', { part: one.partName }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <DateField {...bindDate(entry, 'on')} data-autofocus max={view.today} label={tell('lot.opened')} />
        <TextInput {...bindText(entry, 'keeps', 'keepsOpenedDays')} label={tell('lot.keeps')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}

async function send(draft: { readonly on: string; readonly keeps: string }, lot: string): Promise<Result<Changed<'lot.open'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ lot, on: read.date('on', draft.on), keepsOpenedDays: read.wholeOrNull('keepsOpenedDays', draft.keeps) });
  return whole.ok ? change('lot.open', whole.value) : whole;
}
