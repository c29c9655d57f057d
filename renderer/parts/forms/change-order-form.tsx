import { Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface ChangeOrderFormProps {
  readonly view: PartsView;
  readonly order: PlacedOrderView;
  readonly onClose: () => void;
}

interface Draft {
  readonly number: string;
  readonly expectedOn: string;
  readonly returnBy: string;
  readonly delivery: string;
  readonly discount: string;
  readonly prices: readonly string[];
  readonly note: string;
}

/** Corrects a placed order; what it costs, while nothing of it has come. */
export function ChangeOrderForm({ view, order, onClose }: ChangeOrderFormProps) {
  const { currency } = view;
  const { order: now, deliveries, supplierName, lines } = order;
  const costs = deliveries.length === 0;
  const entry = useEntry({
    key: `order.change ${now.id} ${deliveries.length}`,
    start: {
      number: now.number ?? '', expectedOn: now.expectedOn as string, returnBy: now.returnBy ?? '', delivery: amountText(now.deliveryMinor, currency), discount: amountText(now.discountMinor, currency),
      prices: now.lines.map((line) => amountText(line.priceMinor, currency)), note: now.note,
    } satisfies Draft as Draft,
    send: (draft) => send(draft, order, currency),
    onDone: ({ undo }) => {
      note(tell('change-order.done', { supplier: supplierName }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'number')} data-autofocus label={tell('place.number')} autoComplete="off" />
        <DateField {...bindDate(entry, 'expectedOn')} label={tell('place.expected-on')} />
        <DateField {...bindDate(entry, 'returnBy')} label={tell('place.return-by')} />
      </FieldRow>
      {costs ? (
        <>
          <FieldRow>
            <TextInput {...bindText(entry, 'delivery', 'deliveryMinor')} label={tell('place.delivery', { currency })} inputMode="decimal" autoComplete="off" />
            <TextInput {...bindText(entry, 'discount', 'discountMinor')} label={tell('place.discount', { currency })} inputMode="decimal" autoComplete="off" />
          </FieldRow>
          <FieldGroup legend={tell('place.prices')}>
            {lines.map((line, at) => (
              <TextInput key={line.line.id} {...entry.at(`lines.${at}.priceMinor`)} label={tell('place.price-of', { n: line.line.packs, part: line.partName, currency })} value={entry.draft.prices[at] ?? ''} onChange={(event) => { const price = event.currentTarget.value; entry.set({ prices: entry.draft.prices.map((one, index) => (index === at ? price : one)) }); }} inputMode="decimal" autoComplete="off" />
            ))}
          </FieldGroup>
        </>
      ) : <p>{tell('change-order.costs-stay')}</p>}
      <Textarea {...bindText(entry, 'note')} label={tell('parts.note')} rows={2} />
    </EntryForm>
  );
}

async function send(draft: Draft, { order, deliveries }: PlacedOrderView, currency: string): Promise<Result<Changed<'order.change'>>> {
  const read = new FieldsRead();
  const costs = deliveries.length > 0 ? {} : {
    deliveryMinor: read.money('deliveryMinor', draft.delivery, currency),
    discountMinor: read.money('discountMinor', draft.discount, currency),
    lines: order.lines.map((line, at) => ({ id: line.id, priceMinor: read.money(`lines.${at}.priceMinor`, draft.prices[at] ?? '', currency) })),
  };
  const whole = read.whole({ order: order.id, number: textOrNull(draft.number), expectedOn: read.date('expectedOn', draft.expectedOn), returnBy: read.dateOrNull('returnBy', draft.returnBy), note: draft.note, ...costs });
  return whole.ok ? change('order.change', whole.value) : whole;
}
