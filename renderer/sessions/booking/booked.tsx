import type { BookingView } from '../../../shared-core/views/booking-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { sessionDay } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { OpenBookingSheet } from './booking-sheet.ts';

/** The day that the garage has given. */
export function Booked({ view, open }: { readonly view: BookingView; readonly open: OpenBookingSheet }) {
  const words = useWords();
  const booked = view.booking?.booked ?? null;
  const quote = view.quotes.find((one) => one.id === booked?.quote);
  const add = view.session.state === 'cancelled' ? {} : { add: { label: tell(booked === null ? 'booked.book' : 'booked.change'), onAdd: () => open({ kind: 'book' }) } };
  const said = booked === null ? tell('booked.none') : [
    tell('booked.said', { day: sessionDay(booked.day, view.today, words) }),
    ...(booked.time === null ? [] : [tell('booked.at', { time: booked.time })]),
    ...(booked.reference === '' ? [] : [tell('booked.reference', { reference: booked.reference })]),
    ...(quote === undefined ? [] : [tell('booked.by', { by: quote.byName })]),
  ].join('');
  return <Section title={tell('booked.title')} {...add}><p>{said}</p></Section>;
}
