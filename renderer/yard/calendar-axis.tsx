import { memo } from 'react';
import { useWords } from '../ui/household.tsx';
import { tell } from '../ui/words/tell.ts';
import { monthTicks, yearNames, type TimeScale } from './time-scale.ts';
import styles from './lanes.module.css';

/** The months over the lanes, with the years in which they begin, and today. For the eye: every mark says its own date. */
export const CalendarAxis = memo(function CalendarAxis({ scale }: { readonly scale: TimeScale }) {
  const words = useWords();
  const ticks = monthTicks(scale).filter((tick) => tick.kind !== 'minor' && tick.x < scale.width - 24);
  const years = yearNames(scale, ticks);
  const firstNamed = ticks.find((tick) => tick.kind !== 'week');
  return (
    <div className={styles.axis} aria-hidden="true">
      {years.map(({ year, x }) => <span key={year} className={styles.year} style={at(x)}>{year}</span>)}
      {/* Where the paper begins within a month, its name stands at the edge. */}
      {(firstNamed === undefined || firstNamed.x > 40) && <span className={styles.month} style={at(0)}>{words.monthName(scale.start)}</span>}
      {ticks.map((tick) => <span key={tick.date} className={styles.month} data-kind={tick.kind} style={at(tick.x)}>{tick.kind === 'week' ? Number(tick.date.slice(8, 10)) : words.monthName(tick.date)}</span>)}
      {scale.todayX >= 0 && <span className={styles.todayWord} style={{ transform: `translateX(calc(${scale.todayX}px - 50%))` }}>{tell('axis.today')}</span>}
    </div>
  );
});

/** Moved and not laid anew: another part of the calendar shifts nothing else of the page. */
function at(x: number) {
  return { transform: `translateX(${x}px)` };
}
