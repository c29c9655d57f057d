import { Button } from '@mantine/core';
import { Link } from 'wouter';
import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { sessionDay } from '../../ui/plan/plan-words.ts';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import tones from '../../ui/tones.module.css';
import { tell } from '../../ui/words/tell.ts';

/** The garage knows that it is not coming: nothing of it stands any more. */
async function takeOff(session: string): Promise<void> {
  const reply = await change('booking.drop', { session, why: 'cancelled' });
  note(reply.ok ? tell('booking.taken-off') : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
}

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
              {one.gone ? tell('session.title', where) : <Link href={`/sessions/${one.session}/booking`} aria-label={tell('garages.open', where)}>{tell('session.title', where)}</Link>}{` · ${one.carNames.join(', ')} · `}
              <span className={one.waits ? tones.late : ''}>{one.said.text}</span>
              {one.notes.map((note) => <div key={note.text} className={sectionStyles.soft}>{note.text}</div>)}
              {one.gone && one.waits && <Button size="compact-sm" variant="default" aria-label={tell('garages.told-of', where)} onClick={() => void takeOff(one.session)}>{tell('garages.told')}</Button>}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
