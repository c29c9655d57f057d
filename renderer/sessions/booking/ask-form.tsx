import { Button, Checkbox, CloseButton, Textarea, TextInput } from '@mantine/core';
import type { BookingView, RequestCar } from '../../../shared-core/views/booking-view-schema.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { askStart, sendAsked, type AskDraft } from './ask-draft.ts';
import styles from './booking.module.css';

interface AskFormProps {
  readonly view: BookingView;
  /** Asks anew for what was not done. */
  readonly rest?: boolean;
  readonly onClose: () => void;
}

/** Writes what is asked of the garage, car by car. */
export function AskForm({ view, rest = false, onClose }: AskFormProps) {
  const entry = useEntry({
    key: `booking.ask${rest ? '-rest' : ''} ${view.session.id}`,
    start: askStart(view, rest),
    send: (draft) => sendAsked(draft, view.session.id, rest),
    onDone: ({ undo }) => {
      note(tell('booking.saved'), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('booking.save')} onCancel={onClose}>
      <DateField {...bindDate(entry, 'askedOn')} data-autofocus max={view.today} label={tell('booking.asked-on')} />
      {view.cars.map((car) => <CarFields key={car.car} entry={entry} car={car} />)}
      <Checkbox {...bindTick(entry, 'digitalRecord')} label={tell('booking.digital')} />
      <Textarea {...bindText(entry, 'note')} label={tell('booking.note-field')} rows={2} />
      <TextInput {...bindText(entry, 'contact')} label={tell('booking.contact-field')} autoComplete="off" />
    </EntryForm>
  );
}

function CarFields({ entry, car }: { readonly entry: Entry<AskDraft>; readonly car: RequestCar }) {
  const { bring, unwanted } = entry.draft;
  const offered = car.offersUnwanted.filter((one) => !unwanted.some((line) => line.car === car.car && line.text === one.text));
  const toBring = car.offersBring.filter((one) => !bring.some((line) => line.car === car.car && line.text === one.text && line.lot === one.lot));
  return (
    <>
      <TextLines entry={entry} list="wanted" car={car} />
      <TextLines entry={entry} list="unwanted" car={car}>
        {offered.length > 0 && <Offers offers={offered.map((one) => ({ label: tell('booking.offer', { text: one.text, why: one.why.text }), take: () => entry.set({ unwanted: [...unwanted, { id: null, car: car.car, text: one.text }] }) }))} />}
      </TextLines>
      <BroughtLines entry={entry} car={car}>
        {toBring.length > 0 && <Offers offers={toBring.map(({ why, ...one }) => ({ label: tell('booking.offer', { text: one.text, why: why.text }), take: () => entry.set({ bring: [...bring, { ...one, quantity: one.quantity === null ? '' : String(one.quantity) }] }) }))} />}
      </BroughtLines>
    </>
  );
}

interface LinesProps {
  readonly entry: Entry<AskDraft>;
  readonly car: RequestCar;
  readonly children?: React.ReactNode;
}

/** The lines of one car in a list that holds those of all; paths are by their place in that list. */
function TextLines({ entry, list, car, children }: LinesProps & { readonly list: 'wanted' | 'unwanted' }) {
  const all = entry.draft[list];
  const what = tell(`booking.${list}-of`, { car: car.carName });
  const put = (lines: readonly (typeof all)[number][]) => entry.set({ [list]: lines });
  const own = all.map((line, at) => ({ line, at })).filter(({ line }) => line.car === car.car);
  return (
    <FieldGroup legend={what} place={entry.atGroup(list)}>
      {own.map(({ line, at }, n) => (
        <div key={at} className={styles.line}>
          <TextInput {...entry.at(`${list}.${at}.text`)} aria-label={`${what}, ${tell('booking.line', { n: n + 1 })}`} value={line.text} onChange={(event) => { const text = event.currentTarget.value; put(all.map((one, index) => (index === at ? { ...one, text } : one))); }} autoComplete="off" />
          <CloseButton aria-label={tell('booking.line-out', { n: n + 1, what })} onClick={() => put(all.filter((_, index) => index !== at))} />
        </div>
      ))}
      {children}
      <Button variant="default" size="compact-md" aria-label={tell('booking.add', { what })} onClick={() => entry.set(list === 'wanted' ? { wanted: [...entry.draft.wanted, { id: null, car: car.car, task: null, text: '' }] } : { unwanted: [...entry.draft.unwanted, { id: null, car: car.car, text: '' }] })}>{tell('booking.add', { what })}</Button>
    </FieldGroup>
  );
}

function BroughtLines({ entry, car, children }: LinesProps) {
  const all = entry.draft.bring;
  const what = tell('booking.bring-of', { car: car.carName });
  const put = (at: number, changed: Partial<(typeof all)[number]>) => entry.set({ bring: all.map((one, index) => (index === at ? { ...one, ...changed } : one)) });
  const own = all.map((line, at) => ({ line, at })).filter(({ line }) => line.car === car.car);
  return (
    <FieldGroup legend={what} place={entry.atGroup('bring')}>
      {own.map(({ line, at }, n) => (
        <div key={at} className={styles.line}>
          <TextInput {...entry.at(`bring.${at}.text`)} aria-label={`${what}, ${tell('booking.line', { n: n + 1 })}`} value={line.text} onChange={(event) => put(at, { text: event.currentTarget.value })} autoComplete="off" />
          <TextInput {...entry.at(`bring.${at}.quantity`)} className={styles.short ?? ''} aria-label={tell('booking.bring-quantity', { n: n + 1 })} value={line.quantity} onChange={(event) => put(at, { quantity: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
          <CloseButton aria-label={tell('booking.line-out', { n: n + 1, what })} onClick={() => entry.set({ bring: all.filter((_, index) => index !== at) })} />
        </div>
      ))}
      {children}
      <Button variant="default" size="compact-md" aria-label={tell('booking.add', { what })} onClick={() => entry.set({ bring: [...all, { car: car.car, part: null, lot: null, unit: null, text: '', quantity: '' }] })}>{tell('booking.add', { what })}</Button>
    </FieldGroup>
  );
}

function Offers({ offers }: { readonly offers: readonly { readonly label: string; readonly take: () => void }[] }) {
  return (
    <ul className={styles.offers}>
      {offers.map((one) => <li key={one.label}><Button size="compact-sm" variant="default" onClick={one.take}>+ {one.label}</Button></li>)}
    </ul>
  );
}
