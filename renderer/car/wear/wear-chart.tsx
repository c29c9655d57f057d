import { fromDayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { chartShape, type ChartShape, type Spot } from './chart-shape.ts';
import { chartWords } from './chart-words.ts';
import { valueText } from './value-words.ts';
import styles from './wear-chart.module.css';

interface WearChartProps {
  readonly series: WearSeriesView;
  readonly today: LocalDate;
}

const WIDTH = 288;
const HEIGHT = 96;
/** Below the drawing stand the days. */
const FOOT = 18;
const DOT = 3.5;
/** Words this near to an edge would be cut. */
const EDGE = 24;

/** Measurements over time, the line through them on to the limit, and the limit. */
export function WearChart({ series, today }: WearChartProps) {
  const words = useWords();
  const shape = chartShape(series, today, WIDTH, HEIGHT);
  if (shape === null) return null;
  const { todayX } = shape;
  return (
    <svg className={styles.chart} viewBox={`0 0 ${WIDTH} ${HEIGHT + FOOT}`} role="img" aria-label={chartWords(series, words)}>
      <line className={styles.today} x1={todayX} x2={todayX} y1={0} y2={HEIGHT} />
      {shape.ahead !== null && <polygon className={styles.ground} points={listOf(shape.ahead.ground)} />}
      <line className={styles.base} x1={0} x2={WIDTH} y1={HEIGHT} y2={HEIGHT} />
      <Limits series={series} shape={shape} />
      {shape.ahead !== null && <polyline className={styles.ahead} points={listOf(shape.ahead.likely)} />}
      {shape.line.length > 0 && <polyline className={styles.line} points={listOf(shape.line)} />}
      {shape.dots.map((dot) => <Dot key={dot.id} {...dot} />)}
      <text className={styles.word} x={0} y={HEIGHT + FOOT - 4}>{words.month(fromDayNumber(Math.round(shape.from)))}</text>
      {todayX > 2 * EDGE && <text className={styles.word} x={Math.min(todayX, WIDTH - EDGE / 2)} y={HEIGHT + FOOT - 4} textAnchor="middle">{tell('wear-chart.today')}</text>}
      {todayX < WIDTH - 3 * EDGE && <text className={styles.word} x={WIDTH} y={HEIGHT + FOOT - 4} textAnchor="end">{words.month(fromDayNumber(Math.round(shape.to)))}</text>}
    </svg>
  );
}

function Limits({ series, shape }: { readonly series: WearSeriesView; readonly shape: ChartShape }) {
  return shape.limits.map(({ y, value }) => {
    const typed = series.limits.find((one) => one.value === value)?.limit;
    return (
      <g key={value}>
        <line className={styles.limit} x1={0} x2={WIDTH} y1={y} y2={y} />
        {typed !== undefined && <text className={styles.limitWord} {...clearPlace(y > HEIGHT / 2 ? y - 4 : y + 12, shape.dots)}>{tell('wear-chart.limit-label', { limit: valueText(typed) })}</text>}
      </g>
    );
  });
}

/** Where along its line the words of a limit may stand, and how far they reach there. */
const PLACES = [
  { x: 2, textAnchor: 'start', from: 0, to: WIDTH / 3 },
  { x: WIDTH / 2, textAnchor: 'middle', from: WIDTH / 3, to: (2 * WIDTH) / 3 },
  { x: WIDTH - 2, textAnchor: 'end', from: (2 * WIDTH) / 3, to: WIDTH },
] as const;
const WORDS_HEIGHT = 12;

/** The first place for the words of a limit, at that height, on which no measurement stands. */
function clearPlace(y: number, dots: ChartShape['dots']) {
  const isClear = ({ from, to }: (typeof PLACES)[number]) => !dots.some((dot) => dot.x > from - DOT && dot.x < to + DOT && dot.y > y - WORDS_HEIGHT - DOT && dot.y < y + DOT);
  const { x, textAnchor } = PLACES.find(isClear) ?? PLACES[0];
  return { x, y, textAnchor };
}

function Dot({ x, y, kind }: ChartShape['dots'][number]) {
  if (kind === 'left-out') return <path className={styles.leftOut} d={`M${x - DOT} ${y - DOT} l${2 * DOT} ${2 * DOT} m0 ${-2 * DOT} l${-2 * DOT} ${2 * DOT}`} />;
  return <circle className={kind === 'read' ? styles.read : styles.workedOut} cx={x} cy={y} r={DOT} />;
}

function listOf(spots: readonly Spot[]): string {
  return spots.map(({ x, y }) => `${x},${y}`).join(' ');
}
