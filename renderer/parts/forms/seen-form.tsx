import { TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface SeenFormProps {
  readonly view: PartsView;
  readonly one: PartsView['offers'][number];
  readonly onClose: () => void;
}

/** Says that an offer was seen again, at the same price or another. */
export function SeenForm({ view: { currency, today }, one, onClose }: SeenFormProps) {
  const { offer, partName } = one;
  const entry = useEntry({
    key: `offer.see ${offer.id} ${offer.seenOn}`,
    start: { on: today as string, price: amountText(offer.priceMinor, currency) },
    send: (draft) => send(draft, offer.id, currency),
    onDone: ({ undo }) => {
      note(tell('seen.done', { part: partName }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'price', 'priceMinor')} data-autofocus label={tell('offer-form.price', { currency })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'on')} max={today} label={tell('offer-form.seen-on')} />
      </FieldRow>
    </EntryForm>
  );
}

async function send(draft: { readonly on: string; readonly price: string }, id: string, currency: string): Promise<Result<Changed<'offer.see'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ id, on: read.date('on', draft.on), priceMinor: read.money('priceMinor', draft.price, currency) });
  return whole.ok ? change('offer.see', whole.value) : whole;
}
