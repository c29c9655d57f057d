import { memo, useMemo } from 'react';
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
import type { MarkNoteWays } from './use-mark-note.ts';
import styles from './lanes.module.css';

interface LaneRowProps extends LaneWithMarks {
  readonly scale: TimeScale;
  readonly size: LaneSize;
  readonly opened: boolean;
  readonly onOpen: (car: string, open: boolean) => void;
  readonly measure: (text: string) => number;
  readonly note: MarkNoteWays;
  readonly posts: readonly PlacedPost[];
  readonly drag: PostDrag;
  /** Its field for a reading is open; the letter that opens it, while the letters are shown. */
  readonly reading: boolean;
  readonly letter: string | null;
  readonly onReading: (car: string, open: boolean) => void;
}

/** Rows and marks of a lane that is opened: all of them. */
const ALL = { rows: 60, marks: 400 };

/** A car's lane: who it is and what its odometer says, its marks on the calendar, and what did not fit. */
export const LaneRow = memo(function LaneRow({ lane, marks, scale, size, opened, onOpen, measure, note, posts, drag, reading, letter, onReading }: LaneRowProps) {
  const layout = useMemo(() => layLane(marks, scale, opened ? ALL : { rows: size.rows, marks: size.kind === 'low' ? 1 : ALL.marks }, measure), [marks, scale, opened, size, measure]);
  const { height, above } = laneWithPosts(posts, lane.id, layout, opened ? openHeight(layout.rows, size) : size.height);

  return (
    <li data-lane={lane.id} className={styles.lane} data-size={opened ? 'tall' : size.kind}>
      <LaneHead lane={lane} today={scale.today} letter={letter} reading={reading} onReading={(open) => onReading(lane.id, open)} />
      <div className={styles.time} style={{ height }}>
        <LaneGround lane={lane} scale={scale} />
        <LanePosts car={lane.id} posts={posts} layout={layout} height={height} above={above} drag={drag} />
        <LaneMarks lane={lane} layout={layout} above={above} note={note} onFocus={() => size.kind === 'low' && onOpen(lane.id, true)} />
        {marks.length > 0 && layout.placed.length === 0 && <p className={styles.nothing}>{tell('lane.nothing-due')}</p>}
        {marks.length === 0 && <p className={styles.nothing}>{tell('lane.nothing')} <Link href={`/car/${lane.id}`}>{tell('lane.nothing-add')}</Link></p>}
      </div>
      <LaneFoot lane={lane} layout={layout} low={size.kind === 'low'} opened={opened} onOpen={(open) => onOpen(lane.id, open)} />
    </li>
  );
});
