import { bandPath, flagPath, pinPath, wedgePath } from '../ui/marks/mark-paths.ts';
import marks from '../ui/marks/marks.module.css';
import styles from './first-start.module.css';

const LANE = 30;
const TODAY = 78;

/** A yard of three lanes, small, to show what one is about to see. It shows nobody's car. */
export function StartPicture() {
  return (
    <svg className={styles.picture} viewBox="0 0 400 96" aria-hidden="true">
      {[0, 1, 2, 3].map((lane) => <line key={lane} className={styles.pictureRule} x1="0" x2="400" y1={3 + lane * LANE} y2={3 + lane * LANE} />)}
      <rect className={styles.pictureHatch} x="200" y={3 + 2 * LANE} width="110" height={LANE} />
      <line className={styles.pictureToday} x1={TODAY} x2={TODAY} y1="0" y2="96" />
      <g className={marks.late} transform={`translate(0 ${11})`}><path className={marks.filled} d={flagPath(TODAY)} /></g>
      <g className={marks.later} transform={`translate(0 ${11})`}><path className={marks.outlined} d={bandPath({ from: 190, likely: 250, to: 330 })} /></g>
      <g className={marks.soon} transform={`translate(0 ${11 + LANE})`}><path className={marks.filled} d={bandPath({ from: 60, likely: 108, to: 160 })} /></g>
      <g className={marks.later} transform={`translate(0 ${11 + LANE})`}><path className={marks.outlined} d={wedgePath(296, 356)} /></g>
      <g className={marks.later} transform={`translate(0 ${11 + 2 * LANE})`}><path className={marks.outlined} d={pinPath(140)} /></g>
      <g className={marks.soon} transform={`translate(0 ${11 + 2 * LANE})`}><path className={marks.filled} d={wedgePath(58, 104)} /></g>
    </svg>
  );
}
