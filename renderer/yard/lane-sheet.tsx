import { useElementSize } from '@mantine/hooks';
import { useCallback, useMemo, useRef, useState } from 'react';
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
import { SightButtons } from './sight-buttons.tsx';
import { timeScale } from './time-scale.ts';
import { useMarkNote } from './use-mark-note.ts';
import { useFocusInLanes } from './use-focus-in-lanes.ts';
import type { LaneReadings } from './use-lane-readings.ts';
import { usePostDrag } from './use-post-drag.ts';
import type { PostControl } from './use-posts.tsx';
import type { SightControl } from './use-sight.ts';
import { useSightWheel } from './use-sight-wheel.ts';
import styles from './lanes.module.css';

interface LaneSheetProps {
  readonly today: LocalDate;
  readonly lanes: readonly LaneWithMarks[];
  readonly control: SightControl;
  /** Every lane is opened. */
  readonly unfolded: boolean;
  readonly readings: LaneReadings;
  readonly posts: PostControl;
}

const LABEL_FONT = "600 13px 'Source Sans 3'";

/** One sheet of paper: a lane for each car under one calendar. */
export function LaneSheet({ today, lanes, control, unfolded, readings, posts }: LaneSheetProps) {
  const { ref, width } = useElementSize();
  const measure = useTextWidth(LABEL_FONT);
  const note = useMarkNote();
  const [opened, setOpened] = useState<string | null>(null);
  const { span, shift } = control.sight;
  const scale = useMemo(() => timeScale(today, { span, shift }, width), [today, span, shift, width]);
  const size = laneSize(lanes.length);
  const postLayout = useMemo(() => layPosts(posts.posts, scale, measure), [posts.posts, scale, measure]);
  const open = useCallback((car: string, isOpen: boolean) => setOpened(isOpen ? car : null), []);
  const setReading = readings.setOpen;
  const openReading = useCallback((car: string, isOpen: boolean) => setReading(isOpen ? car : null), [setReading]);
  const sheet = useRef<HTMLElement>(null);
  const axis = useRef<HTMLDivElement>(null);
  useSightWheel(sheet, { axis, control, pixelsADay: scale.pixelsADay });
  useFocusInLanes(sheet, `${span} ${shift}`, note.ways.hide);
  const drag = usePostDrag({ today, pixelsADay: scale.pixelsADay, onDrag: posts.drag });

  const onKeyDown = (event: React.KeyboardEvent<HTMLElement>) => {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    if (event.key === 'Escape') note.ways.hide();
    if (moveAmongMarks(event.key, event.target as HTMLElement)) event.preventDefault();
  };

  return (
    <section ref={sheet} data-tour="lanes" className={styles.sheet} aria-label={tell('yard.lanes')} onKeyDown={onKeyDown}>
      <div className={styles.axisRow}>
        <SightButtons today={today} control={control} />
        <div ref={axis} className={styles.axisLine} title={tell('axis.wheel')}>
          <div ref={ref} className={styles.axisPlace}>
            {width > 0 && <CalendarAxis scale={scale} />}
          </div>
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
            onOpen={open}
            measure={measure}
            note={note.ways}
            posts={postLayout.placed}
            drag={drag}
            reading={readings.open === one.lane.id}
            letter={readings.letterOf(one.lane.id)}
            onReading={openReading}
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
