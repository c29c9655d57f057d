import type { BookingView, Outcome } from '../../../shared-core/views/booking-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { PaperLink } from '../../ui/paper-link.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sheetStyles from '../sheet/sheet.module.css';
import type { OpenBookingSheet } from './booking-sheet.ts';

const PARTS = [['done', 'done'], ['notDone', 'not-done'], ['unsaid', 'unsaid'], ['against', 'against'], ['unasked', 'unasked']] as const;

/** What came back against what was asked, in words and line by line, and what was charged against the price. */
export function WhatCameBack({ view, open }: { readonly view: BookingView; readonly open: OpenBookingSheet }) {
  const { outcome } = view;
  return (
    <Section title={tell('back.title')} add={{ label: tell(outcome === null ? 'back.enter' : 'back.change'), onAdd: () => open({ kind: 'back' }) }}>
      {outcome === null ? <p className={sectionStyles.soft}>{tell('back.none')}</p> : <Told outcome={outcome} />}
      {view.booking?.cameBack?.paper != null && <p><PaperLink paper={view.booking.cameBack.paper} text={tell('back.paper')} /></p>}
    </Section>
  );
}

/** What was asked for the session before and is over: of which garage, how it ended, and what came back. */
export function Earlier({ view }: { readonly view: BookingView }) {
  if (view.earlier.length === 0) return null;
  return (
    <Section title={tell('back.earlier')}>
      {view.earlier.map(({ placeName, said, paper, outcome }, at) => (
        <div key={at} className={sheetStyles.group} role="group" aria-label={tell('back.earlier-of', { place: placeName, said: said.text })}>
          <h3>{tell('back.earlier-of', { place: placeName, said: said.text })}</h3>
          {outcome !== null && <Told outcome={outcome} level="h4" />}
          {paper !== null && <p><PaperLink paper={paper} text={tell('back.paper')} /></p>}
        </div>
      ))}
    </Section>
  );
}

function Told({ outcome, level: Head = 'h3' }: { readonly outcome: Outcome; readonly level?: 'h3' | 'h4' }) {
  const words = useWords();
  const charged = (minor: number | null) => (minor === null || minor === 0 ? '' : tell('back.charged-line', { amount: words.money(minor) }));
  const money = (minor: number | null) => (minor === null ? tell('back.unknown') : words.money(minor));
  return (
    <>
      {outcome.summary.map((one) => <p key={one.text}>{inOwnMoney(one.text, words)}</p>)}
      {PARTS.filter(([part]) => outcome[part].length > 0).map(([part, word]) => (
        <div key={part} className={sheetStyles.group} role="group" aria-label={tell(`back.${word}`)}>
          <Head>{tell(`back.${word}`)}</Head>
          <ul className={sheetStyles.plain}>{outcome[part].map((line, at) => <li key={at}>{tell('back.line', { text: line.text, note: line.note === '' ? '' : ` (${line.note})`, charged: charged(line.chargedMinor) })}</li>)}</ul>
        </div>
      ))}
      {outcome.quote !== null && outcome.groups.length > 0 && (
        <div className={sheetStyles.group} role="group" aria-label={tell('back.groups', { by: outcome.quote.byName })}>
          <Head>{tell('back.groups', { by: outcome.quote.byName })}</Head>
          <ul className={sheetStyles.plain}>
            {outcome.groups.map((group, at) => (
              <li key={at}>{`${group.lines.join(', ')}: ${tell('back.quoted')} ${money(group.quotedMinor)}, ${tell('back.charged')} ${money(group.chargedMinor)}.`} {group.why?.text}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
