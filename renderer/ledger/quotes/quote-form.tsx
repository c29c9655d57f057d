import { Button, Checkbox, CloseButton, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import type { QuoteView } from '../../../shared-core/views/quotes-view.ts';
import { change } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { quoteDraft, quoteRequest, thingsOf, type PriceDraft, type QuoteDraft } from './quote-draft.ts';

interface QuoteFormProps {
  readonly view: ReplyOf<'quotes.show'>;
  readonly now: QuoteView['quote'] | null;
  readonly onClose: () => void;
}

/** A price that somebody named: for which car, for what, and whether in one sum or line by line. */
export function QuoteForm({ view, now, onClose }: QuoteFormProps) {
  const { byName } = useWords();
  const { currency } = view;
  const cars = [...view.cars].sort((a, b) => byName(a.name, b.name));
  const itemsOf = (car: string) => cars.find((one) => one.car === car)?.items ?? [];
  const nameOf = (car: string) => (item: string) => itemsOf(car).find((one) => one.item === item)?.name ?? now?.things.find((one) => one.item === item)?.text ?? item;
  const entry = useEntry({
    key: `quote.set ${now?.id ?? ''}`,
    start: quoteDraft(now, cars[0]?.car ?? '', view.today, currency),
    send: async (draft) => {
      const whole = quoteRequest(draft, now, nameOf(draft.car), currency);
      return whole.ok ? change('quote.set', whole.value) : whole;
    },
    onDone: ({ set, undo }) => {
      note(tell('held-quote.done', { by: set.by }), undo);
      onClose();
    },
  });
  const { draft } = entry;
  const items = [...itemsOf(draft.car)].sort((a, b) => byName(a.name, b.name));
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect {...entry.at('car')} label={tell('ledger.car')} value={draft.car} onChange={(event) => entry.set({ car: event.currentTarget.value, items: [] })} data={cars.map((one) => ({ value: one.car, label: one.name }))} disabled={now !== null} />
        <TextInput {...bindText(entry, 'by')} data-autofocus label={tell('held-quote.by')} autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'on')} label={tell('held-quote.on')} />
        <DateField {...bindDate(entry, 'validUntil')} label={tell('held-quote.until')} />
      </FieldRow>
      <FieldGroup legend={tell('held-quote.things')} hint={tell('held-quote.things-what')} place={entry.atGroup('things')}>
        {items.map((one) => <Checkbox key={one.item} label={one.name} checked={draft.items.includes(one.item)} onChange={(event) => entry.set({ items: event.currentTarget.checked ? [...draft.items, one.item] : draft.items.filter((id) => id !== one.item) })} />)}
        <Textarea {...bindText(entry, 'others')} label={tell('held-quote.others')} description={tell('held-quote.others-what')} autosize minRows={1} />
      </FieldGroup>
      <NativeSelect {...bindText(entry, 'way')} label={tell('held-quote.way')} data={choices('held-quote.way-', ['whole', 'lines'])} />
      {draft.way === 'lines' && <Prices entry={entry} things={thingsOf(draft, nameOf(draft.car))} currency={currency} />}
      <TextInput {...bindText(entry, 'total', 'totalMinor')} label={tell(draft.way === 'whole' ? 'held-quote.total' : 'held-quote.total-too', { currency })} inputMode="decimal" autoComplete="off" />
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

interface PricesProps {
  readonly entry: Entry<QuoteDraft>;
  readonly things: readonly { readonly id: string; readonly text: string }[];
  readonly currency: string;
}

/** Prices line by line, each with what it covers. */
function Prices({ entry, things, currency }: PricesProps) {
  const { prices } = entry.draft;
  const replace = (at: number, more: Partial<PriceDraft>) => entry.set({ prices: prices.map((one, index) => (index === at ? { ...one, ...more } : one)) });
  return (
    <>
      {prices.map((one, at) => (
        <FieldGroup key={at} legend={tell('held-quote.price-n', { n: at + 1 })} place={entry.atGroup(`lines.${at}.covers`)}>
          <TextInput {...entry.at(`lines.${at}.amountMinor`)} label={tell('held-quote.price', { currency })} value={one.amount} inputMode="decimal" autoComplete="off" autoFocus onChange={(event) => replace(at, { amount: event.currentTarget.value })} />
          {things.map((thing) => <Checkbox key={thing.id} label={thing.text} checked={one.covers.includes(thing.id)} onChange={(event) => replace(at, { covers: event.currentTarget.checked ? [...one.covers, thing.id] : one.covers.filter((id) => id !== thing.id) })} />)}
          <CloseButton aria-label={tell('held-quote.remove-price', { n: at + 1 })} onClick={() => entry.set({ prices: prices.filter((_, index) => index !== at) })} />
        </FieldGroup>
      ))}
      <Button variant="default" size="compact-md" onClick={() => entry.set({ prices: [...prices, { text: '', covers: [], amount: '' }] })}>{tell('held-quote.add-price')}</Button>
    </>
  );
}
