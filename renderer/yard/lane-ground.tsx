import type { Lane } from '../../shared-core/views/yard-view.ts';
import { laidUpStretches, monthTicks, type TimeScale } from './time-scale.ts';
import styles from './lanes.module.css';

/** What lies under the marks of a lane: laid-up months, the lines of the calendar, today. */
export function LaneGround({ lane, scale }: { readonly lane: Lane; readonly scale: TimeScale }) {
  return (
    <div className={styles.ground} aria-hidden="true">
      {laidUpStretches(scale, lane.laidUpMonths, lane.layUps).map(({ from, to }) => (
        <div key={from} className={styles.hatch} style={{ transform: `translateX(${from}px)`, width: to - from }} />
      ))}
      {monthTicks(scale).map((tick) => (
        <div key={tick.date} className={styles.line} data-kind={tick.kind} style={{ transform: `translateX(${tick.x}px)` }} />
      ))}
      {scale.todayX >= 0 && <div className={styles.todayLine} style={{ transform: `translateX(${scale.todayX}px)` }} />}
    </div>
  );
}
