import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { tell } from '../ui/words/tell.ts';
import { mostShift } from './calendar-sight.ts';
import styles from './sight.module.css';
import type { SightControl } from './use-sight.ts';

interface SightButtonsProps {
  readonly today: LocalDate;
  readonly control: SightControl;
}

/** Moves the calendar ahead and back, and always finds today again. A button that can do nothing more says so and keeps the focus. */
export function SightButtons({ today, control: { sight, moveOn, toToday } }: SightButtonsProps) {
  const [atToday, atEnd] = [sight.shift === 0, sight.shift >= mostShift(today, sight.span)];
  return (
    <div className={styles.moves} role="group" aria-label={tell('sight.moves')}>
      <button type="button" aria-disabled={atToday} aria-label={tell('sight.back')} aria-keyshortcuts="Shift+ArrowLeft" onClick={() => !atToday && moveOn(-1)}><Arrow way="back" /></button>
      <button type="button" aria-disabled={atToday} aria-keyshortcuts="T" className={styles.today} onClick={() => !atToday && toToday()}>{tell('sight.today')}</button>
      <button type="button" aria-disabled={atEnd} aria-label={tell('sight.ahead')} aria-keyshortcuts="Shift+ArrowRight" onClick={() => !atEnd && moveOn(1)}><Arrow way="ahead" /></button>
    </div>
  );
}

function Arrow({ way }: { readonly way: 'back' | 'ahead' }) {
  return <svg width="16" height="12" viewBox="0 0 16 12" aria-hidden="true"><path d={way === 'back' ? 'M15 6H3M8 1L3 6l5 5' : 'M1 6h12M8 1l5 5-5 5'} fill="none" stroke="currentColor" strokeWidth="2" /></svg>;
}
