import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { WishesView } from '../../../shared-core/views/wishes-view-schema.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface SavingFormProps {
  readonly saving: WishesView['saving'];
  readonly today: string;
  readonly currency: string;
  readonly onClose: () => void;
}

interface Draft {
  readonly monthly: string;
  readonly since: string;
  readonly before: string;
}

/** What is put by for wishes each month, since when, and what was there before. */
export function SavingForm({ saving, today, currency, onClose }: SavingFormProps) {
  const entry = useEntry({
    key: 'ledger-settings.set saving',
    start: { monthly: amountText(saving.monthlyMinor, currency), since: saving.savingSince ?? today, before: amountText(saving.savedBefore, currency) } satisfies Draft as Draft,
    send: (draft) => send(draft, currency),
    onDone: ({ undo }) => {
      note(tell('wishes.saving-done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'monthly', 'monthlyMinor')} data-autofocus label={tell('wishes.monthly', { currency })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'since', 'savingSince')} label={tell('wishes.since')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'before', 'savedBefore')} label={tell('wishes.before', { currency })} inputMode="decimal" autoComplete="off" />
    </EntryForm>
  );
}

async function send(draft: Draft, currency: string): Promise<Result<Changed<'ledger-settings.set'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ monthlyMinor: read.moneyOrNull('monthlyMinor', draft.monthly, currency) ?? 0, savingSince: read.dateOrNull('savingSince', draft.since), savedBefore: read.moneyOrNull('savedBefore', draft.before, currency) ?? 0 });
  return whole.ok ? change('ledger-settings.set', whole.value) : whole;
}
