import { Button } from '@mantine/core';
import type { BookingView, QuoteView } from '../../../shared-core/views/booking-view-schema.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { PaperLink } from '../../ui/paper-link.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { focusHeading } from '../../ui/screen-title.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import tones from '../../ui/tones.module.css';
import { tell } from '../../ui/words/tell.ts';
import sheetStyles from '../sheet/sheet.module.css';
import type { OpenBookingSheet } from './booking-sheet.ts';

/** The prices named for what was asked, each with what it is for. */
export function Quotes({ view, open }: { readonly view: BookingView; readonly open: OpenBookingSheet }) {
  return (
    <Section title={tell('quotes.title')} add={{ label: tell('quotes.add'), onAdd: () => open({ kind: 'quote', quote: null }) }}>
      {view.quotes.length === 0 && <p className={sectionStyles.soft}>{tell('quotes.none')}</p>}
      {view.quotes.map((quote) => <Quote key={quote.id} view={view} quote={quote} open={open} />)}
    </Section>
  );
}

function Quote({ view, quote, open }: { readonly view: BookingView; readonly quote: QuoteView; readonly open: OpenBookingSheet }) {
  const words = useWords();
  const title = tell('quotes.of', { by: quote.byName, day: words.nearDate(quote.on, view.today) });
  const textOf = (id: string) => view.booking?.wanted.find((one) => one.id === id)?.text ?? id;
  const remove = async () => {
    const reply = await change('booking.quote-remove', { session: view.session.id, quote: quote.id });
    note(reply.ok ? tell('quotes.removed', { by: quote.byName }) : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
    if (reply.ok) focusHeading();
  };
  const facts = [
    quote.sumMinor === null ? tell('quotes.sum-unknown') : tell('quotes.sum', { amount: words.money(quote.sumMinor) }),
    ...(quote.validUntil === null ? [] : [tell('quotes.until', { day: words.nearDate(quote.validUntil, view.today) })]),
    ...(quote.booked ? [tell('quotes.booked')] : []),
    ...(quote.note === '' ? [] : [quote.note]),
  ];
  return (
    <div className={sheetStyles.group}>
      <h3>{title}</h3>
      <p>{facts.join(' · ')}{quote.paper !== null && <> · <PaperLink paper={quote.paper} text={tell('quotes.paper')} /></>}</p>
      <ul className={sheetStyles.plain}>
        {quote.lines.map((line, at) => <li key={at}>{[line.text, line.amountMinor === null ? tell('quotes.no-amount') : words.money(line.amountMinor), line.covers.length === 0 ? tell('quotes.covers-none') : tell('quotes.covers', { lines: line.covers.map(textOf).join(', ') })].join(' · ')}</li>)}
      </ul>
      {quote.notes.map((one) => <p key={one.text} className={tones.soon}>{inOwnMoney(one.text, words)}</p>)}
      <div className={sheetStyles.buttons}>
        <Button size="compact-sm" variant="default" aria-label={`${tell('quotes.change')}: ${title}`} onClick={() => open({ kind: 'quote', quote: quote.id })}>{tell('quotes.change')}</Button>
        {!quote.booked && <Button size="compact-sm" variant="default" aria-label={`${tell('quotes.remove')}: ${title}`} onClick={() => void remove()}>{tell('quotes.remove')}</Button>}
      </div>
    </div>
  );
}
