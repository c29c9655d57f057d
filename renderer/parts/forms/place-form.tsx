import { Checkbox, Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { SupplierOrder } from '../../../shared-core/views/order-view-schema.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { focusHeading } from '../../ui/screen-title.tsx';
import { tell } from '../../ui/words/tell.ts';
import { placing } from '../order/ordering.ts';

interface PlaceFormProps {
  readonly view: PartsView;
  readonly proposed: SupplierOrder;
  readonly onClose: () => void;
}

interface Draft {
  readonly number: string;
  readonly placedOn: string;
  readonly expectedOn: string;
  readonly delivery: string;
  readonly discount: string;
  readonly returnBy: string;
  readonly note: string;
  readonly sure: boolean;
  readonly prices: readonly string[];
}

/** Places an order with one supplier as it was worked out; what was agreed otherwise is entered here. */
export function PlaceForm({ view, proposed, onClose }: PlaceFormProps) {
  const { currency, today } = view;
  const entry = useEntry({
    key: `order.place ${proposed.supplier} ${proposed.lines.map((line) => `${line.offer} ${line.packs}`).join(' ')}`,
    start: {
      number: '', placedOn: today as string, expectedOn: proposed.expectedOn as string, delivery: amountText(proposed.deliveryMinor, currency), discount: '', returnBy: '', note: '', sure: false,
      prices: proposed.lines.map((line) => amountText(line.priceMinor, currency)),
    } satisfies Draft as Draft,
    send: (draft) => placing(proposed.supplier, () => send(draft, proposed, currency)),
    onDone: ({ undo }) => {
      note(tell('place.done', { supplier: proposed.supplierName }), undo);
      onClose();
      focusHeading({ preventScroll: true });
    },
  });
  const setPrice = (at: number, price: string) => entry.set({ prices: entry.draft.prices.map((one, index) => (index === at ? price : one)) });
  return (
    <EntryForm entry={entry} submit={tell('place.submit')} onCancel={onClose}>
      <p>{tell('place.what')}</p>
      <FieldRow>
        <TextInput {...bindText(entry, 'number')} data-autofocus label={tell('place.number')} autoComplete="off" />
        <DateField {...bindDate(entry, 'placedOn')} max={today} label={tell('place.placed-on')} />
        <DateField {...bindDate(entry, 'expectedOn')} label={tell('place.expected-on')} />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'delivery', 'deliveryMinor')} label={tell('place.delivery', { currency })} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'discount', 'discountMinor')} label={tell('place.discount', { currency })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'returnBy')} label={tell('place.return-by')} />
      </FieldRow>
      <FieldGroup legend={tell('place.prices')} hint={tell('place.prices-what')} place={entry.atGroup('lines')}>
        {proposed.lines.map((line, at) => (
          <TextInput key={line.offer} {...entry.at(`lines.${at}.priceMinor`)} label={tell('place.price-of', { n: line.packs, part: line.partName, currency })} value={entry.draft.prices[at] ?? ''} onChange={(event) => setPrice(at, event.currentTarget.value)} inputMode="decimal" autoComplete="off" />
        ))}
      </FieldGroup>
      <Checkbox {...bindTick(entry, 'sure')} label={tell('place.sure')} />
      <MoreFields><Textarea {...bindText(entry, 'note')} label={tell('parts.note')} rows={2} /></MoreFields>
    </EntryForm>
  );
}

async function send(draft: Draft, { place }: SupplierOrder, currency: string): Promise<Result<Changed<'order.place'>>> {
  const read = new FieldsRead();
  const whole = read.whole({
    supplier: place.supplier,
    number: textOrNull(draft.number),
    placedOn: read.date('placedOn', draft.placedOn),
    expectedOn: read.date('expectedOn', draft.expectedOn),
    deliveryMinor: read.money('deliveryMinor', draft.delivery, currency),
    discountMinor: read.moneyOrNull('discountMinor', draft.discount, currency) ?? 0,
    returnBy: read.dateOrNull('returnBy', draft.returnBy),
    lines: place.lines.map((line, at) => ({ ...line, priceMinor: read.money(`lines.${at}.priceMinor`, draft.prices[at] ?? '', currency) })),
    note: draft.note,
    sure: draft.sure,
  });
  return whole.ok ? change('order.place', whole.value) : whole;
}
