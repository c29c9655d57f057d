import { useWords } from '../ui/household.tsx';
import { tell } from '../ui/words/tell.ts';
import { monthTicks, type TimeScale } from './time-scale.ts';
import styles from './lanes.module.css';

/** Names nearer than this to the word "today" would touch it. */
const TODAY_ROOM = 30;

/** The months over the lanes, with the years in which they begin, and today. For the eye: every mark says its own date. */
export function CalendarAxis({ scale }: { readonly scale: TimeScale }) {
  const words = useWords();
  const ticks = monthTicks(scale).filter((tick) => tick.kind !== 'minor' && tick.x < scale.width - 24);
  const firstYear = ticks.find((tick) => tick.kind === 'year');
  return (
    <div className={styles.axis} aria-hidden="true">
      {(firstYear === undefined || firstYear.x > 60) && <span className={styles.year} style={{ left: 0 }}>{scale.start.slice(0, 4)}</span>}
      {ticks.map((tick) => (
        <span key={tick.date}>
          {tick.kind === 'year' && Math.abs(tick.x - scale.todayX) > TODAY_ROOM + 12 && <span className={styles.year} style={{ left: tick.x }}>{tick.date.slice(0, 4)}</span>}
          <span className={styles.month} style={{ left: tick.x }}>{words.monthName(tick.date)}</span>
        </span>
      ))}
      <span className={styles.todayWord} style={{ left: scale.todayX }}>{tell('axis.today')}</span>
    </div>
  );
}
