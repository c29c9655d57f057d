import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { BookingView } from '../../../shared-core/views/booking-view-schema.ts';
import { change } from '../../ui/change.ts';
import { bindDate, bindText, bindTick } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

/** A day after what came back is another appointment, booked today. */
function isAnother({ booking }: BookingView, day: string): boolean {
  return booking?.cameBack != null && day > booking.cameBack.doneOn;
}

/** Books the day that the garage has given; on another day than the session's, the session goes along where that is ticked. */
export function BookForm({ view, onClose }: { readonly view: BookingView; readonly onClose: () => void }) {
  const words = useWords();
  const { session, booking } = view;
  const booked = booking?.booked ?? null;
  const entry = useEntry({
    key: `booking.book ${session.id}`,
    start: { day: (booked?.day ?? session.day) as string, time: booked?.time ?? '', reference: booked?.reference ?? '', quote: booked?.quote ?? '', moveSession: false },
    send: async (draft) => {
      const read = new FieldsRead();
      const day = read.date('day', draft.day);
      const whole = read.whole({ session: session.id, day: day ?? session.day, time: textOrNull(draft.time.trim()), reference: draft.reference, quote: textOrNull(draft.quote), moveSession: draft.moveSession, ...(booked === null || isAnother(view, draft.day) ? {} : { on: booked.on }) });
      return whole.ok ? change('booking.book', whole.value) : whole;
    },
    onDone: (reply) => {
      note([tell('booked.saved', { day: words.longDate(reply.booking.booked?.day ?? session.day) }), ...reply.notes].join(' '), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('booked.save')} onCancel={onClose}>
      <FieldRow>
        <DateField {...bindDate(entry, 'day')} data-autofocus label={tell('booked.day')} />
        <TextInput {...bindText(entry, 'time')} label={tell('booked.time')} autoComplete="off" />
      </FieldRow>
      {entry.draft.day !== session.day && <Checkbox {...bindTick(entry, 'moveSession')} label={tell('booked.move')} />}
      <TextInput {...bindText(entry, 'reference')} label={tell('booked.reference-field')} autoComplete="off" />
      {view.quotes.length > 0 && <NativeSelect {...bindText(entry, 'quote')} label={tell('booked.quote')} data={[{ value: '', label: tell('booked.quote-none') }, ...view.quotes.map((one) => ({ value: one.id, label: one.sumMinor === null ? one.byName : `${one.byName}, ${words.money(one.sumMinor)}` }))]} />}
    </EntryForm>
  );
}
