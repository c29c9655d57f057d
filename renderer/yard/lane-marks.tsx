import { useState } from 'react';
import { Link } from 'wouter';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { Eye } from '../ui/marks/eye.tsx';
import { bandPath, flagPath, MARK_HEIGHT, pinPath, wedgePath, wornPath } from '../ui/marks/mark-paths.ts';
import markStyles from '../ui/marks/marks.module.css';
import { tell } from '../ui/words/tell.ts';
import { ROW_HEIGHT } from './lane-height.ts';
import type { LaneLayout, PlacedMark } from './lane-layout.ts';
import type { MarkNoteWays } from './use-mark-note.ts';
import { saidBeyondLabel } from './yard-mark.ts';
import styles from './lanes.module.css';

interface LaneMarksProps {
  readonly lane: Lane;
  readonly layout: LaneLayout;
  /** Where the first row begins. */
  readonly above: number;
  readonly note: MarkNoteWays;
  readonly onFocus: () => void;
}

/** The marks of a lane: one stop for the Tab key, arrow keys within. */
export function LaneMarks({ lane, layout, above, note, onFocus }: LaneMarksProps) {
  const [current, setCurrent] = useState<string | null>(null);
  const { placed } = layout;
  const stop = placed.find((one) => one.mark.id === current) ?? placed[0];
  if (placed.length === 0) return null;
  return (
    <ul className={styles.marks} aria-label={tell('lane.marks', { car: lane.name })}>
      {placed.map((one) => (
        <li key={one.mark.id}>
          <MarkLink
            placed={one}
            top={above + one.row * ROW_HEIGHT}
            stop={one === stop}
            note={note}
            onFocus={() => {
              setCurrent(one.mark.id);
              onFocus();
            }}
          />
        </li>
      ))}
    </ul>
  );
}

interface MarkLinkProps {
  readonly placed: PlacedMark;
  readonly top: number;
  readonly stop: boolean;
  readonly note: MarkNoteWays;
  readonly onFocus: () => void;
}

function MarkLink({ placed, top, stop, note, onFocus }: MarkLinkProps) {
  const { mark, left, right, labelLeft, labelWidth, side } = placed;
  const [from, to] = [Math.min(left, labelLeft), Math.max(right, labelLeft + labelWidth)];
  return (
    <Link
      href={mark.href}
      data-mark={mark.id}
      className={`${styles.mark} ${markStyles[mark.tone]}`}
      style={{ transform: `translate(${from}px, ${top}px)`, width: to - from, height: ROW_HEIGHT }}
      tabIndex={stop ? 0 : -1}
      onMouseEnter={(event) => note.show(mark, event.currentTarget)}
      onMouseLeave={note.hideSoon}
      onFocus={(event) => {
        onFocus();
        note.show(mark, event.currentTarget);
      }}
      onBlur={note.hide}
    >
      <svg className={styles.shape} style={{ transform: `translateX(${left - from}px)` }} width={right - left} height={MARK_HEIGHT + 2} viewBox={`${left} -1 ${right - left} ${MARK_HEIGHT + 2}`}>
        {drawn(placed)}
      </svg>
      <span className={styles.label} aria-hidden="true" data-side={side} style={{ transform: `translateX(${labelLeft - from}px)`, width: labelWidth }}>
        <span className={styles.labelName}>{mark.name}</span>
        <span className={styles.labelRest}>{mark.rest}</span>
      </span>
      <span className="only-said">{`${mark.name}${mark.rest}. ${saidBeyondLabel(mark)}`}</span>
    </Link>
  );
}

function drawn({ mark, fromX, likelyX, toX }: PlacedMark) {
  const kind = mark.filled ? markStyles.filled : markStyles.outlined;
  switch (mark.shape) {
    case 'flag':
      return <path className={kind} d={flagPath(toX)} />;
    case 'pin':
      return <path className={kind} d={pinPath(likelyX)} />;
    case 'eye':
      return <Eye x={likelyX} />;
    case 'wedge':
      return <path className={kind} d={wedgePath(fromX, toX)} />;
    case 'worn':
      return <path className={kind} d={wornPath({ from: fromX, likely: likelyX, to: toX })} />;
    default:
      return <path className={kind} d={bandPath({ from: fromX, likely: likelyX, to: toX })} />;
  }
}
