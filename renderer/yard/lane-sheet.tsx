import { useElementSize } from '@mantine/hooks';
import { useState } from 'react';
import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { useTextWidth } from '../ui/text-width.ts';
import { tell } from '../ui/words/tell.ts';
import { CalendarAxis } from './calendar-axis.tsx';
import { LaneRow } from './lane-row.tsx';
import { laneSize } from './lane-height.ts';
import type { LaneWithMarks } from './lane-with-marks.ts';
import { moveAmongMarks } from './move-among-marks.ts';
import { Legend } from './legend.tsx';
import { MarkNote } from './mark-note.tsx';
import { PostBand } from './post-band.tsx';
import { layPosts } from './post-layout.ts';
import { pixelsADay, SPANS, timeScale, type Span } from './time-scale.ts';
import { useMarkNote } from './use-mark-note.ts';
import { usePostDrag } from './use-post-drag.ts';
import type { PostControl } from './use-posts.tsx';
import styles from './lanes.module.css';

interface LaneSheetProps {
  readonly today: LocalDate;
  readonly lanes: readonly LaneWithMarks[];
  readonly span: Span;
  /** Every lane is opened. */
  readonly unfolded: boolean;
  readonly onSpan: (span: Span) => void;
  readonly posts: PostControl;
}

const LABEL_FONT = "600 13px 'Source Sans 3'";

/** One sheet of paper: a lane for each car under one calendar. */
export function LaneSheet({ today, lanes, span, unfolded, onSpan, posts }: LaneSheetProps) {
  const { ref, width } = useElementSize();
  const measure = useTextWidth(LABEL_FONT);
  const note = useMarkNote();
  const [opened, setOpened] = useState<string | null>(null);
  const scale = timeScale(today, span, width);
  const size = laneSize(lanes.length);
  const postLayout = layPosts(posts.posts, scale, measure);
  const drag = usePostDrag({ today, pixelsADay: pixelsADay(scale), onDrag: posts.drag });

  const onKeyDown = (event: React.KeyboardEvent<HTMLElement>) => {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') note.hide();
    const step = event.key === '+' || event.key === '=' ? 1 : event.key === '-' ? -1 : 0;
    const next = SPANS[SPANS.indexOf(span) + step];
    if (step !== 0 && next !== undefined) onSpan(next);
    if (moveAmongMarks(event.key, event.target as HTMLElement)) event.preventDefault();
  };

  return (
    <section className={styles.sheet} aria-label={tell('yard.lanes')} onKeyDown={onKeyDown}>
      <div className={styles.axisRow}>
        <div ref={ref} className={styles.axisPlace}>
          {width > 0 && <CalendarAxis scale={scale} />}
        </div>
      </div>
      <ol className={styles.lanes}>
        {lanes.map((one) => (
          <LaneRow
            key={one.lane.id}
            {...one}
            scale={scale}
            size={size}
            opened={unfolded || opened === one.lane.id}
            onOpen={(open) => setOpened(open ? one.lane.id : null)}
            measure={measure}
            note={note}
            posts={postLayout.placed}
            drag={drag}
          />
        ))}
        {posts.posts.length > 0 && <PostBand layout={postLayout} scale={scale} drag={drag} onOpen={posts.open} onKey={posts.key} />}
      </ol>
      {posts.panel}
      <Legend />
      <MarkNote note={note} />
    </section>
  );
}
