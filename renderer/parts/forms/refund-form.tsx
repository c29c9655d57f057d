import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface RefundFormProps {
  readonly view: PartsView;
  readonly back: PlacedOrderView['returns'][number];
  readonly onClose: () => void;
}

/** Writes down what came back for something that was returned. */
export function RefundForm({ view: { currency, today }, back, onClose }: RefundFormProps) {
  const words = useWords();
  const open = Math.max(0, back.refundExpectedMinor - back.refunds.reduce((sum, one) => sum + one.minor, 0));
  const entry = useEntry({
    key: `order.refund ${back.id} ${back.refunds.length}`,
    start: { on: today as string, amount: amountText(open, currency) },
    send: (draft) => send(draft, back.id, currency),
    onDone: ({ return: after, undo }) => {
      note(tell('refund.done', { amount: words.money(after.refunds.at(-1)?.minor ?? 0) }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('refund.submit')} onCancel={onClose}>
      <p>{tell('refund.what', { amount: words.money(open) })}</p>
      <FieldRow>
        <TextInput {...bindText(entry, 'amount', 'minor')} data-autofocus label={tell('refund.amount', { currency })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'on')} max={today} label={tell('refund.on')} />
      </FieldRow>
    </EntryForm>
  );
}

async function send(draft: { readonly on: string; readonly amount: string }, back: string, currency: string): Promise<Result<Changed<'order.refund'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ return: back, minor: read.money('minor', draft.amount, currency), on: read.date('on', draft.on) });
  return whole.ok ? change('order.refund', whole.value) : whole;
}
