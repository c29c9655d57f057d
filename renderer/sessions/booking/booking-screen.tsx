import { useState } from 'react';
import { Link } from 'wouter';
import type { BookingView } from '../../../shared-core/views/booking-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney, sessionTitle } from '../../ui/plan/plan-words.ts';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { Section } from '../../ui/section.tsx';
import { SideSheet } from '../../ui/side-sheet.tsx';
import tones from '../../ui/tones.module.css';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { PageStyle } from '../sheet/page-style.tsx';
import { useSheetPaper } from '../sheet/sheet-choices.ts';
import sheetStyles from '../sheet/sheet.module.css';
import { AskForm } from './ask-form.tsx';
import { BackForm } from './back-form.tsx';
import { BookForm } from './book-form.tsx';
import { Booked } from './booked.tsx';
import type { BookingSheet } from './booking-sheet.ts';
import { DropForm } from './drop-form.tsx';
import { QuoteForm } from './quote-form.tsx';
import { Quotes } from './quotes.tsx';
import { RequestButtons } from './request-buttons.tsx';
import { RequestSheet } from './request-sheet.tsx';
import { Earlier, WhatCameBack } from './what-came-back.tsx';

/** What is asked of a garage for one session, from the request to what came back; the request sheets are what is printed. */
export function BookingScreen({ session }: { readonly session: string }) {
  const words = useWords();
  const answer = useAsk('booking.show', { session }, { hold: true });
  const title = answer.state === 'answered' ? tell('booking.title-of', { title: sessionTitle(answer.value.session, answer.value.today, words) }) : tell('booking.title');
  const back = <Link href="/sessions">{tell('job.back')}</Link>;
  return (
    <div className={sheetStyles.screen} data-job-sheet>
      <div className={sheetStyles.top}>
        <p>{back}</p>
        <ScreenTitle>{title}</ScreenTitle>
      </div>
      <Asked answer={answer} onward={back}>{(view) => <Booking view={view} />}</Asked>
    </div>
  );
}

function Booking({ view }: { readonly view: BookingView }) {
  const words = useWords();
  const [paper, setPaper] = useSheetPaper();
  const [sheet, setSheet] = useState<BookingSheet | null>(null);
  const { session, askBy, booking } = view;
  const asked = booking !== null && booking.askedOn !== null && booking.dropped === null;
  return (
    <>
      <PageStyle paper={paper} session={tell('job.head', { day: words.longDate(session.day), place: session.placeName })} cars={view.cars.map((car) => car.carName)} />
      <div className={sheetStyles.top}>
        <p>{tell('booking.state', { said: view.said.text })}</p>
        {askBy !== null && view.open && <p className={askBy.past ? tones.late : ''}>{tell(askBy.past ? 'booking.ask-late' : 'booking.ask-by', { n: askBy.noticeDays, day: words.nearDate(askBy.day, view.today) })}</p>}
        {session.state === 'proposed' && <p>{tell('booking.not-kept')}</p>}
        {view.notes.map((note) => <p key={note.text} className={tones.late}>{inOwnMoney(note.text, words)}</p>)}
      </div>
      <Section title={tell('booking.request')} {...(booking === null ? { hint: tell('booking.proposed') } : {})}>
        <RequestButtons view={view} paper={paper} onPaper={setPaper} open={setSheet} />
      </Section>
      {view.cars.map((car, at) => <RequestSheet key={car.car} view={view} car={car} at={at} />)}
      {asked && <Quotes view={view} open={setSheet} />}
      {(asked || view.open) && booking?.dropped == null && <Booked view={view} open={setSheet} />}
      {asked && <WhatCameBack view={view} open={setSheet} />}
      <Earlier view={view} />
      <SideSheet title={sheet === null ? '' : TITLES[sheet.kind]()} opened={sheet !== null} onClose={() => setSheet(null)}>{sheet !== null && formOf(view, sheet, () => setSheet(null))}</SideSheet>
    </>
  );
}

const TITLES = {
  ask: () => tell('booking.request'),
  'ask-rest': () => tell('booking.rest'),
  quote: () => tell('quotes.add'),
  book: () => tell('booked.title'),
  back: () => tell('back.title'),
  drop: () => tell('booking.drop'),
} as const satisfies Record<BookingSheet['kind'], () => string>;

function formOf(view: BookingView, sheet: BookingSheet, onClose: () => void) {
  switch (sheet.kind) {
    case 'ask':
      return <AskForm view={view} onClose={onClose} />;
    case 'ask-rest':
      return <AskForm view={view} rest onClose={onClose} />;
    case 'quote':
      return <QuoteForm view={view} quote={view.quotes.find((one) => one.id === sheet.quote) ?? null} onClose={onClose} />;
    case 'book':
      return <BookForm view={view} onClose={onClose} />;
    case 'back':
      return <BackForm view={view} onClose={onClose} />;
    case 'drop':
      return <DropForm view={view} onClose={onClose} />;
  }
}
