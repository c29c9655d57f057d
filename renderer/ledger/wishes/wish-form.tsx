import { Button, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { WishView } from '../../../shared-core/views/wishes-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import type { Choice } from '../../ui/household-choices.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { useAsk } from '../../ui/use-ask.ts';
import { useCars } from '../../ui/use-cars.ts';
import { tell } from '../../ui/words/tell.ts';

interface WishFormProps {
  readonly now: WishView['wish'] | null;
  readonly currency: string;
  readonly onClose: () => void;
}

interface Draft {
  readonly car: string;
  readonly name: string;
  readonly others: readonly { readonly text: string; readonly price: string }[];
  readonly needs: readonly { readonly specification: string; readonly quantity: string }[];
  readonly place: 'home' | 'garage';
  readonly minutes: string;
  readonly access: string;
  readonly garagePrice: string;
  readonly note: string;
}

/** A wish: for which car, of what it is made, and what doing it takes. */
export function WishForm(props: WishFormProps) {
  const cars = useCars();
  const parts = useAsk('parts.show', {});
  if (cars.length === 0) return <p role="status">{tell('asking')}</p>;
  return <Asked answer={parts}>{({ specifications }) => <Form {...props} cars={cars} specifications={specifications.map(({ specification }) => ({ value: specification.id, label: specification.name }))} />}</Asked>;
}

function Form({ now, currency, onClose, cars, specifications }: WishFormProps & { readonly cars: readonly Choice[]; readonly specifications: readonly Choice[] }) {
  const { byName } = useWords();
  const entry = useEntry({
    key: `wish.set ${now?.id ?? ''}`,
    start: draftOf(now, cars[0]?.value ?? '', currency),
    send: async (draft) => {
      const whole = requestOf(draft, now, currency);
      return whole.ok ? change('wish.set', whole.value) : whole;
    },
    onDone: ({ set, undo }) => {
      note(tell('wishes.done', { wish: set.name }), undo);
      onClose();
    },
  });
  const { draft } = entry;
  const { others, needs } = draft;
  const known = [...specifications].sort((a, b) => byName(a.label, b.label));
  const setOther = (at: number, more: Partial<Draft['others'][number]>) => entry.set({ others: others.map((one, index) => (index === at ? { ...one, ...more } : one)) });
  const setNeed = (at: number, more: Partial<Draft['needs'][number]>) => entry.set({ needs: needs.map((one, index) => (index === at ? { ...one, ...more } : one)) });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <NativeSelect {...entry.at('car')} label={tell('ledger.car')} value={draft.car} onChange={(event) => entry.set({ car: event.currentTarget.value })} data={[...cars]} />
        <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('wishes.name')} autoComplete="off" />
      </FieldRow>
      <FieldGroup legend={tell('wishes.things')} hint={tell('wishes.things-what')} place={entry.atGroup('others')}>
        {others.map((one, at) => (
          <FieldRow key={at}>
            <TextInput {...entry.at(`others.${at}.text`)} label={tell('wishes.thing', { n: at + 1 })} value={one.text} autoFocus autoComplete="off" onChange={(event) => setOther(at, { text: event.currentTarget.value })} />
            <TextInput {...entry.at(`others.${at}.priceMinor`)} label={tell('wishes.thing-price', { currency })} value={one.price} inputMode="decimal" autoComplete="off" onChange={(event) => setOther(at, { price: event.currentTarget.value })} />
            <CloseButton aria-label={tell('wishes.remove-thing', { n: at + 1 })} onClick={() => entry.set({ others: others.filter((_, index) => index !== at) })} />
          </FieldRow>
        ))}
        <Button variant="default" size="compact-md" onClick={() => entry.set({ others: [...others, { text: '', price: '' }] })}>{tell('wishes.add-thing')}</Button>
      </FieldGroup>
      {known.length > 0 && (
        <FieldGroup legend={tell('wishes.needs')} hint={tell('wishes.needs-what')} place={entry.atGroup('needs')}>
          {needs.map((one, at) => (
            <FieldRow key={at}>
              <NativeSelect {...entry.at(`needs.${at}.specification`)} label={tell('need-form.specification', { n: at + 1 })} value={one.specification} data={known} onChange={(event) => setNeed(at, { specification: event.currentTarget.value })} />
              <TextInput {...entry.at(`needs.${at}.quantity`)} label={tell('need-form.quantity', { n: at + 1 })} value={one.quantity} inputMode="decimal" autoComplete="off" onChange={(event) => setNeed(at, { quantity: event.currentTarget.value })} />
              <CloseButton aria-label={tell('need-form.remove', { n: at + 1 })} onClick={() => entry.set({ needs: needs.filter((_, index) => index !== at) })} />
            </FieldRow>
          ))}
          <Button variant="default" size="compact-md" onClick={() => entry.set({ needs: [...needs, { specification: known[0]?.value ?? '', quantity: '1' }] })}>{tell('need-form.add')}</Button>
        </FieldGroup>
      )}
      <FieldGroup legend={tell('wishes.work')}>
        <FieldRow>
          <NativeSelect {...entry.at('place')} label={tell('wishes.place')} value={draft.place} data={choices('wishes.place-', ['home', 'garage'])} onChange={(event) => entry.set({ place: event.currentTarget.value as 'home' })} />
          <TextInput {...bindText(entry, 'minutes')} label={tell('wishes.minutes')} inputMode="numeric" autoComplete="off" />
          {draft.place === 'garage' && <TextInput {...bindText(entry, 'garagePrice')} label={tell('wishes.garage-price', { currency })} inputMode="decimal" autoComplete="off" />}
        </FieldRow>
        <TextInput {...bindText(entry, 'access')} label={tell('wishes.access')} description={tell('wishes.access-what')} autoComplete="off" />
      </FieldGroup>
      <TextInput {...bindText(entry, 'note')} label={tell('parts.note')} autoComplete="off" />
    </EntryForm>
  );
}

function draftOf(now: WishView['wish'] | null, car: string, currency: string): Draft {
  if (now === null) return { car, name: '', others: [], needs: [], place: 'home', minutes: '', access: '', garagePrice: '', note: '' };
  const amount = (minor: number | null) => (minor === null ? '' : amountText(minor, currency));
  return {
    car: now.car, name: now.name, others: now.others.map((one) => ({ text: one.text, price: amount(one.priceMinor) })), needs: now.needs.map((one) => ({ specification: one.specification, quantity: String(one.quantity) })),
    place: now.place, minutes: now.minutes === null ? '' : String(now.minutes), access: now.access.join(', '), garagePrice: amount(now.garagePrice), note: now.note,
  };
}

function requestOf(draft: Draft, now: WishView['wish'] | null, currency: string): Result<RequestOf<'wish.set'>> {
  const read = new FieldsRead();
  return read.whole({
    ...(now === null ? {} : { id: now.id }), car: draft.car, name: draft.name, place: draft.place, note: draft.note,
    others: draft.others.map((one, at) => ({ text: one.text, priceMinor: read.moneyOrNull(`others.${at}.priceMinor`, one.price, currency) })),
    needs: draft.needs.map((one, at) => ({ specification: one.specification, quantity: read.number(`needs.${at}.quantity`, one.quantity, '4.5') })),
    minutes: read.wholeOrNull('minutes', draft.minutes), access: draft.access.split(',').map((one) => one.trim()).filter((one) => one !== ''),
    garagePrice: draft.place === 'garage' ? read.moneyOrNull('garagePrice', draft.garagePrice, currency) : null,
  });
}
