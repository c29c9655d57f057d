import { Link } from 'wouter';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { tell } from '../ui/words/tell.ts';
import type { LaneLayout } from './lane-layout.ts';
import styles from './lanes.module.css';

interface LaneFootProps {
  readonly lane: Lane;
  readonly layout: LaneLayout;
  /** A low lane has room for one count. */
  readonly low: boolean;
  readonly opened: boolean;
  readonly onOpen: (open: boolean) => void;
}

/** At a lane's end: what lies past the span or did not fit, and what nobody knows the history of. */
export function LaneFoot({ lane, layout, low, opened, onOpen }: LaneFootProps) {
  const { folded, unknown } = layout;
  const onlyLater = layout.before === 0 && folded.every((mark) => mark.state === 'ahead');
  const what = tell(onlyLater ? 'lane.later' : layout.before === folded.length ? 'lane.before' : 'lane.more', { n: folded.length });
  const notKnown = tell('lane.unknown', { n: unknown.length });
  return (
    <div className={styles.foot}>
      {(folded.length > 0 || opened) && (
        <button type="button" className={styles.fold} aria-expanded={opened} aria-label={opened ? tell('lane.fold', { car: lane.name }) : tell('lane.unfold', { car: lane.name, what })} onClick={() => onOpen(!opened)}>
          {opened ? tell('lane.less') : what}
        </button>
      )}
      {opened && folded.length > 0 && <span className={styles.past}>{what}</span>}
      {unknown.length > 0 && (!low || opened) && <Link href={`/car/${lane.id}`} className={styles.unknown} aria-label={tell('lane.unknown-of', { car: lane.name, what: notKnown })}>{notKnown}</Link>}
    </div>
  );
}
