import { Button, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { offerDraft, sendOffer, type BreakDraft } from './offer-draft.ts';
import styles from '../parts.module.css';

interface OfferFormProps {
  readonly view: PartsView;
  /** What stands, or null: a new one. */
  readonly now: PartsView['offers'][number]['offer'] | null;
  /** The part of a new one. */
  readonly part: string | null;
  readonly onClose: () => void;
}

/** States an offer: a pack of a part at a supplier's price, as seen on a day. */
export function OfferForm({ view, now, part, onClose }: OfferFormProps) {
  const { currency, today } = view;
  const { byName } = useWords();
  const suppliers = [...view.suppliers].sort((a, b) => byName(a.name, b.name)).map((one) => ({ value: one.id, label: one.name }));
  const parts = [...view.parts].sort((a, b) => byName(a.part.name, b.part.name)).map((one) => ({ value: one.part.id, label: one.part.name }));
  const entry = useEntry({
    key: `offer.set ${now?.id ?? ''} ${part ?? ''}`,
    start: offerDraft(now, { supplier: suppliers[0]?.value ?? '', part: part ?? parts[0]?.value ?? '', today, currency }),
    send: (draft) => sendOffer(draft, now, currency),
    onDone: ({ undo }) => {
      note(tell('offer-form.done'), undo);
      onClose();
    },
  });
  const { breaks } = entry.draft;
  const setBreak = (at: number, next: Partial<BreakDraft>) => entry.set({ breaks: breaks.map((one, index) => (index === at ? { ...one, ...next } : one)) });
  const unit = view.parts.find((one) => one.part.id === entry.draft.part)?.unit ?? 'each';
  if (suppliers.length === 0 || parts.length === 0) return <p>{tell('offers.first')}</p>;
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'supplier')} data-autofocus label={tell('offers.supplier')} data={suppliers} />
        <NativeSelect {...bindText(entry, 'part')} label={tell('line.part')} data={parts} />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'quantity')} label={tell('offer-form.quantity', { unit: tell(`amount-unit.${unit as 'each'}`) })} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'price', 'priceMinor')} label={tell('offer-form.price', { currency })} inputMode="decimal" autoComplete="off" />
        <DateField {...bindDate(entry, 'seenOn')} max={today} label={tell('offer-form.seen-on')} />
      </FieldRow>
      <TextInput {...bindText(entry, 'number')} label={tell('offer-form.number')} autoComplete="off" />
      <MoreFields>
        <FieldRow>
          <TextInput {...bindText(entry, 'tax', 'taxAdded')} label={tell('offer-form.tax')} description={tell('offer-form.tax-what')} inputMode="decimal" autoComplete="off" />
          <TextInput {...bindText(entry, 'deposit', 'depositMinor')} label={tell('offer-form.deposit', { currency })} description={tell('offer-form.deposit-what')} inputMode="decimal" autoComplete="off" />
          <TextInput {...bindText(entry, 'most')} label={tell('offer-form.most')} description={tell('offer-form.most-what')} inputMode="numeric" autoComplete="off" />
        </FieldRow>
        <FieldGroup legend={tell('offer-form.breaks')} hint={tell('offer-form.breaks-what')} place={entry.atGroup('breaks')}>
          {breaks.map((one, at) => (
            <div key={at} className={styles.head}>
              <TextInput {...entry.at(`breaks.${at}.packs`)} label={tell('offer-form.break-packs', { n: at + 1 })} value={one.packs} onChange={(event) => setBreak(at, { packs: event.currentTarget.value })} inputMode="numeric" autoComplete="off" />
              <TextInput {...entry.at(`breaks.${at}.priceMinor`)} label={tell('offer-form.break-price', { n: at + 1, currency })} value={one.price} onChange={(event) => setBreak(at, { price: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
              <CloseButton aria-label={tell('offer-form.break-remove', { n: at + 1 })} onClick={() => entry.set({ breaks: breaks.filter((_, index) => index !== at) })} />
            </div>
          ))}
          <Button variant="default" size="compact-md" onClick={() => entry.set({ breaks: [...breaks, { packs: '', price: '' }] })}>{tell('offer-form.break-add')}</Button>
        </FieldGroup>
      </MoreFields>
    </EntryForm>
  );
}
