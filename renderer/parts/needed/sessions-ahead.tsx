import type { PartsView, SessionParts } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { sessionDay } from '../../ui/plan/plan-words.ts';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

/** What each coming session at home lacks, days before: parts and tools. */
export function SessionsAhead({ view }: { readonly view: PartsView }) {
  if (view.sessions.length === 0) return null;
  return (
    <Section title={tell('ahead.title')}>
      <ul className={sectionStyles.list}>{view.sessions.map((session) => <SessionRow key={session.session} session={session} today={view.today} />)}</ul>
    </Section>
  );
}

function SessionRow({ session, today }: { readonly session: SessionParts; readonly today: string }) {
  const words = useWords();
  const lacking = session.needs.filter((need) => need.lacking > 0);
  const coming = session.needs.filter((need) => need.coming > 0);
  const ready = lacking.length === 0 && session.toolsLacking.length === 0;
  return (
    <li className={styles.row}>
      <div className={styles.head}>
        <h3>{sessionDay(session.day, today, words)}</h3>
        <span>{session.daysAhead === 0 ? tell('ahead.today') : tell('ahead.days', { n: session.daysAhead })}</span>
      </div>
      {ready && <p className={tones.later}>{tell(coming.length === 0 ? 'ahead.ready' : 'ahead.ready-coming', { n: coming.length })}</p>}
      {lacking.map((need) => (
        <p key={`${need.item}/${need.specification}`}><strong className={tones.late}>{tell('ahead.lacks')}</strong> {tell('ahead.lacks-what', { amount: amountWords(need.lacking, need.unit), specification: need.specificationName, car: need.carName, item: need.itemName })}</p>
      ))}
      {session.toolsLacking.map((tool) => (
        <p key={tool.tool}><strong className={tones.late}>{tell('ahead.tool')}</strong> {tell(tool.why === 'missing' ? 'ahead.tool-missing' : 'ahead.tool-borrowed', { tool: tool.name, lender: tool.lender ?? '', date: tool.until === null ? '' : words.date(tool.until) })}</p>
      ))}
    </li>
  );
}
