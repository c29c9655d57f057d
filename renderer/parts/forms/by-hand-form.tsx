import { Button, Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { lineStart, sendByHand, type ByHandDraft, type ByHandLine } from './by-hand-draft.ts';
import styles from '../parts.module.css';

interface ByHandFormProps {
  readonly view: PartsView;
  readonly onClose: () => void;
}

/** Enters an order that was placed without a proposal: by telephone, at a counter. */
export function ByHandForm({ view, onClose }: ByHandFormProps) {
  const { currency, today } = view;
  const { byName } = useWords();
  const suppliers = [...view.suppliers].sort((a, b) => byName(a.name, b.name));
  const entry = useEntry({
    key: 'order.place by hand',
    start: { supplier: suppliers[0]?.id ?? '', number: '', placedOn: today as string, expectedOn: '', delivery: '', lines: [lineStart()], sure: false } satisfies ByHandDraft as ByHandDraft,
    send: (draft) => sendByHand(draft, currency),
    onDone: ({ order, undo }) => {
      note(tell('place.done', { supplier: view.suppliers.find((one) => one.id === order.supplier)?.name ?? '' }), undo);
      onClose();
    },
  });
  const { lines } = entry.draft;
  const setLine = (at: number, change: Partial<ByHandLine>) => entry.set({ lines: lines.map((line, index) => (index === at ? { ...line, ...change } : line)) });
  const offered = view.offers.filter(({ offer }) => offer.supplier === entry.draft.supplier && offer.withdrawnOn === null).sort((a, b) => byName(a.partName, b.partName));
  const sold = [
    { value: '', label: tell('by-hand.choose') },
    ...offered.map(({ offer, partName, unit, paidMinor }) => ({ value: `offer ${offer.id}`, label: tell('by-hand.offer', { part: partName, amount: amountWords(offer.quantity, unit), price: amountText(paidMinor, currency) }) })),
    ...[...view.parts].sort((a, b) => byName(a.part.name, b.part.name)).map(({ part }) => ({ value: `part ${part.id}`, label: tell('by-hand.part', { part: part.name }) })),
  ];
  const choose = (at: number, of: string) => {
    const offer = offered.find((one) => `offer ${one.offer.id}` === of);
    setLine(at, { of, ...(offer === undefined ? {} : { quantity: String(offer.offer.quantity), price: amountText(offer.paidMinor, currency) }) });
  };
  return (
    <EntryForm entry={entry} submit={tell('by-hand.submit')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'supplier')} data-autofocus label={tell('by-hand.supplier')} data={suppliers.map((one) => ({ value: one.id, label: one.name }))} />
        <TextInput {...bindText(entry, 'number')} label={tell('place.number')} autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <DateField {...bindDate(entry, 'placedOn')} max={today} label={tell('place.placed-on')} />
        <DateField {...bindDate(entry, 'expectedOn')} label={tell('by-hand.expected-on')} />
        <TextInput {...bindText(entry, 'delivery', 'deliveryMinor')} label={tell('by-hand.delivery', { currency })} inputMode="decimal" autoComplete="off" />
      </FieldRow>
      <FieldGroup legend={tell('by-hand.lines')} place={entry.atGroup('lines')}>
        {lines.map((line, at) => (
          <div key={at} className={styles.line}>
            <div className={styles.head}>
              <NativeSelect {...entry.at(`lines.${at}.part`)} label={tell('by-hand.what', { n: at + 1 })} value={line.of} onChange={(event) => choose(at, event.currentTarget.value)} data={sold} />
              {lines.length > 1 && <CloseButton aria-label={tell('by-hand.remove', { n: at + 1 })} onClick={() => entry.set({ lines: lines.filter((_, index) => index !== at) })} />}
            </div>
            <FieldRow>
              <TextInput {...entry.at(`lines.${at}.packs`)} label={tell('line.packs')} value={line.packs} onChange={(event) => setLine(at, { packs: event.currentTarget.value })} inputMode="numeric" autoComplete="off" />
              <TextInput {...entry.at(`lines.${at}.quantity`)} label={tell('by-hand.quantity')} value={line.quantity} onChange={(event) => setLine(at, { quantity: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
              <TextInput {...entry.at(`lines.${at}.priceMinor`)} label={tell('by-hand.price', { currency })} value={line.price} onChange={(event) => setLine(at, { price: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
            </FieldRow>
          </div>
        ))}
        <Button variant="default" size="compact-md" onClick={() => entry.set({ lines: [...lines, lineStart()] })}>{tell('by-hand.add')}</Button>
      </FieldGroup>
      <Checkbox {...bindTick(entry, 'sure')} label={tell('place.sure')} />
    </EntryForm>
  );
}
