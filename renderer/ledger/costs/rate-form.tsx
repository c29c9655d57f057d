import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface RateFormProps {
  readonly view: LedgerView;
  readonly onClose: () => void;
}

interface Draft {
  readonly hour: string;
}

/** What an hour of one's own work counts: beside what was paid, never in it. */
export function RateForm({ view, onClose }: RateFormProps) {
  const { settings, currency } = view;
  const entry = useEntry({
    key: 'ledger-settings.set hour',
    start: { hour: amountText(settings.ownHourMinor, currency) } satisfies Draft as Draft,
    send: (draft) => send(draft, currency),
    onDone: ({ undo }) => {
      note(tell('ledger.rate-done'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'hour', 'ownHourMinor')} data-autofocus label={tell('ledger.rate', { currency })} description={tell('ledger.rate-what')} inputMode="decimal" autoComplete="off" />
    </EntryForm>
  );
}

async function send({ hour }: Draft, currency: string): Promise<Result<Changed<'ledger-settings.set'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ ownHourMinor: read.moneyOrNull('ownHourMinor', hour, currency) ?? 0 });
  return whole.ok ? change('ledger-settings.set', whole.value) : whole;
}
