import { Link } from 'wouter';
import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { sessionDay } from '../../ui/plan/plan-words.ts';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import tones from '../../ui/tones.module.css';
import { tell } from '../../ui/words/tell.ts';

/** What was asked of garages for sessions that stand no more: what still waits for a word first. */
export function GarageRows({ view }: { readonly view: SessionsView }) {
  const words = useWords();
  if (view.bookings.length === 0) return null;
  return (
    <Section title={tell('garages.title')}>
      <ul className={sectionStyles.list}>
        {view.bookings.map((one) => {
          const where = { day: sessionDay(one.day, view.today, words), place: one.placeName };
          return (
            <li key={one.session}>
              <Link href={`/sessions/${one.session}/booking`} aria-label={tell('garages.open', where)}>{tell('session.title', where)}</Link>{` · ${one.carNames.join(', ')} · `}
              <span className={one.waits ? tones.late : ''}>{one.said.text}</span>
              {one.notes.map((note) => <div key={note.text} className={sectionStyles.soft}>{note.text}</div>)}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
