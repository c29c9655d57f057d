import { Link } from 'wouter';
import { tell } from '../ui/words/tell.ts';
import { LaneFoot } from './lane-foot.tsx';
import { LaneGround } from './lane-ground.tsx';
import { LaneHead } from './lane-head.tsx';
import { openHeight, type LaneSize } from './lane-height.ts';
import { layLane } from './lane-layout.ts';
import { LaneMarks } from './lane-marks.tsx';
import { LanePosts } from './lane-posts.tsx';
import type { LaneWithMarks } from './lane-with-marks.ts';
import { laneWithPosts, type PlacedPost } from './post-layout.ts';
import type { TimeScale } from './time-scale.ts';
import type { PostDrag } from './use-post-drag.ts';
import type { LaneReadings } from './use-lane-readings.ts';
import type { MarkNoteControl } from './use-mark-note.ts';
import styles from './lanes.module.css';

interface LaneRowProps extends LaneWithMarks {
  readonly scale: TimeScale;
  readonly size: LaneSize;
  readonly opened: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly measure: (text: string) => number;
  readonly note: MarkNoteControl;
  readonly posts: readonly PlacedPost[];
  readonly drag: PostDrag;
  readonly readings: LaneReadings;
}

/** Rows and marks of a lane that is opened: all of them. */
const ALL = { rows: 60, marks: 400 };

/** A car's lane: who it is and what its odometer says, its marks on the calendar, and what did not fit. */
export function LaneRow({ lane, marks, scale, size, opened, onOpen, measure, note, posts, drag, readings }: LaneRowProps) {
  const closed = { rows: size.rows, marks: size.kind === 'low' ? 1 : ALL.marks };
  const layout = layLane(marks, scale, opened ? ALL : closed, measure);
  const { height, above } = laneWithPosts(posts, lane.id, layout, opened ? openHeight(layout.rows, size) : size.height);

  return (
    <li data-lane={lane.id} className={styles.lane} data-size={opened ? 'tall' : size.kind}>
      <LaneHead lane={lane} today={scale.today} letter={readings.letterOf(lane.id)} reading={readings.open === lane.id} onReading={(open) => readings.setOpen(open ? lane.id : null)} />
      <div className={styles.time} style={{ height }}>
        <LaneGround lane={lane} scale={scale} />
        <LanePosts car={lane.id} posts={posts} layout={layout} height={height} above={above} drag={drag} />
        <LaneMarks lane={lane} layout={layout} above={above} note={note} onFocus={() => size.kind === 'low' && onOpen(true)} />
        {marks.length > 0 && layout.placed.length === 0 && <p className={styles.nothing}>{tell('lane.nothing-due')}</p>}
        {marks.length === 0 && <p className={styles.nothing}>{tell('lane.nothing')} <Link href={`/car/${lane.id}`}>{tell('lane.nothing-add')}</Link></p>}
      </div>
      <LaneFoot lane={lane} layout={layout} low={size.kind === 'low'} opened={opened} onOpen={onOpen} />
    </li>
  );
}
