import { useElementSize } from '@mantine/hooks';
import { useId } from 'react';
import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { OdometerCurve } from '../../../shared-core/views/odometer-curve.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { ChartGround } from './chart-ground.tsx';
import { chartScale, HEIGHT, MARGIN, type ChartScale, type Past } from './chart-scale.ts';
import styles from './odometer-chart.module.css';

interface OdometerChartProps {
  readonly curve: OdometerCurve;
  readonly today: LocalDate;
  readonly past: Past;
  /** The table that says the same. */
  readonly tableId: string;
}

/** The car's readings as a line, and the range foreseen for the year to come as a fan. */
export function OdometerChart({ curve, today, past, tableId }: OdometerChartProps) {
  const words = useWords();
  const clip = useId();
  const { ref, width } = useElementSize();
  const scale = chartScale(curve, today, past, width);
  const [last, end] = [curve.points.at(-1), curve.fan.at(-1)];
  const said = last === undefined || end === undefined ? '' : tell('chart.said', {
    n: curve.points.length, date: words.date(last.date), value: words.distance(last.value, curve.unit), low: end.low, high: words.distance(end.high, curve.unit), end: words.month(end.date),
  });
  return (
    <div ref={ref} className={styles.frame}>
      {scale !== null && (
        <svg role="img" aria-label={said} aria-describedby={tableId} width={width} height={HEIGHT} className={styles.chart}>
          <clipPath id={clip}><rect x={MARGIN.left} y={0} width={width - MARGIN.left} height={HEIGHT - MARGIN.bottom + 1} /></clipPath>
          <ChartGround curve={curve} scale={scale} today={today} width={width} />
          <g clipPath={`url(#${clip})`}>
            <path className={styles.fan} d={fanPath(curve.fan, scale)} />
            <path className={styles.foreseen} d={linePath(curve.fan.map(({ date, likely }) => ({ date, value: likely })), scale)} />
            <path className={styles.line} d={linePath(curve.points, scale)} />
            {curve.points.map(({ date, value }) => <circle key={date} className={styles.point} cx={scale.x(date)} cy={scale.y(value)} r={3} />)}
            {curve.replaced.map(({ date, value }) => <path key={date} className={styles.replaced} d={diamond(scale.x(date), scale.y(value))} />)}
            {curve.doubtful.map(({ date, value }) => (
              <text key={`${date} ${value}`} className={styles.doubtful} x={scale.x(date)} y={Math.min(HEIGHT - MARGIN.bottom - 4, Math.max(MARGIN.top + 14, scale.y(value) + 6))} textAnchor="middle">?</text>
            ))}
          </g>
        </svg>
      )}
    </div>
  );
}

type Point = OdometerCurve['points'][number];

function linePath(points: readonly Point[], { x, y }: ChartScale): string {
  return points.map(({ date, value }, at) => `${at === 0 ? 'M' : 'L'}${x(date).toFixed(1)} ${y(value).toFixed(1)}`).join(' ');
}

function fanPath(fan: OdometerCurve['fan'], scale: ChartScale): string {
  const upper = fan.map(({ date, high }) => ({ date, value: high }));
  const lower = fan.map(({ date, low }) => ({ date, value: low })).reverse();
  return `${linePath([...upper, ...lower], scale)} Z`;
}

function diamond(x: number, y: number): string {
  return `M${x} ${y - 6} L${x + 6} ${y} L${x} ${y + 6} L${x - 6} ${y} Z`;
}
