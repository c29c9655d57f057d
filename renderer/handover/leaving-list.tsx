import { Link } from 'wouter';
import type { LeavingView } from '../../shared-core/views/leaving-view.ts';
import { useWords } from '../ui/household.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './handover.module.css';

/** What is to be cancelled, told off, returned or used otherwise when a car leaves. */
export function LeavingList({ view }: { readonly view: LeavingView }) {
  const words = useWords();
  const { obligations, sessions, bookings, orders, shelf } = view;
  const lines = [
    ...obligations.map((one) => ({ key: `o${one.id}`, href: null, text: tell(one.kind === 'insurance' || one.kind === 'road-tax' ? 'leaving.obligation' : 'leaving.other-obligation', { name: one.name, date: words.date(one.lastValidDay) }) })),
    ...bookings.map((one) => ({ key: `b${one.id}`, href: `/sessions/${one.id}/booking`, text: tell(one.day === null ? 'leaving.asked' : 'leaving.booked', { place: one.place, date: one.day === null ? '' : words.date(one.day), reference: one.reference }) })),
    ...sessions.map((one) => ({ key: `s${one.id}`, href: '/sessions', text: tell(one.alone ? 'leaving.session-alone' : 'leaving.session', { place: one.place, date: words.date(one.day) }) })),
    ...orders.map((one) => ({ key: `p${one.id}`, href: '/parts/placed', text: `${tell('leaving.order', { parts: one.parts.join(', '), supplier: one.supplier })}${one.returnBy === null ? '' : ` ${tell('leaving.return-by', { date: words.date(one.returnBy) })}`}` })),
    ...shelf.map((one) => ({ key: `l${one.lot}`, href: '/parts/shelf', text: tell('leaving.shelf', { part: one.part, left: one.left }) })),
  ];
  if (lines.length === 0) return <p>{tell('leaving.nothing')}</p>;
  return <ul className={styles.notes}>{lines.map(({ key, href, text }) => <li key={key}>{href === null ? text : <Link href={href}>{text}</Link>}</li>)}</ul>;
}
