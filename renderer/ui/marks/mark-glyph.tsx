import type { MarkShape } from './mark-shape.ts';
import { Eye } from './eye.tsx';
import { bandPath, flagPath, MARK_HEIGHT, pinPath, wedgePath, wornPath } from './mark-paths.ts';
import styles from './marks.module.css';

const WIDTH = 26;

/** A mark drawn small, as it stands in lists, tables and the legend: the same shape as in a lane. */
export function MarkGlyph({ shape, filled, tone }: MarkShape) {
  return (
    <svg className={`${styles.glyph} ${styles[tone]}`} width={WIDTH} height={MARK_HEIGHT + 2} viewBox={`0 -1 ${WIDTH} ${MARK_HEIGHT + 2}`} aria-hidden="true">
      {drawn(shape, filled)}
    </svg>
  );
}

function drawn(shape: MarkShape['shape'], filled: boolean) {
  const kind = filled ? styles.filled : styles.outlined;
  switch (shape) {
    case 'flag':
      return (
        <>
          <line className={styles.pole} x1={22} x2={22} y1={-1} y2={MARK_HEIGHT + 1} />
          <path className={styles.filled} d={flagPath(22)} />
        </>
      );
    case 'bar':
      return <path className={kind} d={bandPath({ from: 1, likely: 12, to: WIDTH - 1 })} />;
    case 'worn':
      return <path className={kind} d={wornPath({ from: 1, likely: 16, to: WIDTH - 1 })} />;
    case 'wedge':
      return <path className={kind} d={wedgePath(1, WIDTH - 2)} />;
    case 'pin':
      return <path className={kind} d={pinPath(WIDTH / 2)} />;
    case 'question':
      return <text className={styles.letter} x={WIDTH / 2} y={MARK_HEIGHT - 1} textAnchor="middle">?</text>;
    case 'eye':
      return <Eye x={WIDTH / 2} />;
  }
}
