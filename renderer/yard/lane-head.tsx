import { Link } from 'wouter';
import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { useWords } from '../ui/household.tsx';
import { odometerWords } from '../ui/odometer-words.ts';
import { tell } from '../ui/words/tell.ts';
import { LaneDoubt } from './lane-doubt.tsx';
import { LaneReading } from './lane-reading.tsx';
import { laneRemark } from './lane-remark.ts';
import styles from './lanes.module.css';

interface LaneHeadProps {
  readonly lane: Lane;
  readonly today: LocalDate;
  /** The letter that opens its field, while the letters are shown. */
  readonly letter: string | null;
  readonly reading: boolean;
  readonly onReading: (open: boolean) => void;
}

/** Who the lane belongs to, and what its odometer says; a press or the key R turns that into a field for a reading. */
export function LaneHead({ lane, today, letter, reading, onReading }: LaneHeadProps) {
  const words = useWords();
  const odometer = odometerWords(lane.odometer);
  const described = [lane.description, lane.year].filter((part) => part !== null).join(', ');
  const remark = laneRemark(lane, today, words);
  return (
    <div className={styles.head}>
      <div className={styles.who}>
        <h2 className={styles.name}><Link href={`/car/${lane.id}`}>{lane.name}</Link></h2>
        {described !== '' && <p className={styles.described} title={described}>{described}</p>}
        <LaneReading lane={lane} letter={letter} open={reading} onOpen={onReading} />
      </div>
      <div className={styles.gone}>
        <p className={styles.odometer}>{odometer ?? tell('odometer.never')}</p>
        {odometer !== null && <p className={styles.remark} title={remark}>{remark}</p>}
        {/* While its field is open it is asked about there. */}
        {!reading && <LaneDoubt lane={lane} />}
      </div>
    </div>
  );
}
