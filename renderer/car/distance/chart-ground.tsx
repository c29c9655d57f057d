import { useId } from 'react';
import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import { sayNumber } from '../../../shared-core/result/words/say.ts';
import type { OdometerCurve } from '../../../shared-core/views/odometer-curve.ts';
import { useWords } from '../../ui/household.tsx';
import { HEIGHT, MARGIN, type ChartScale } from './chart-scale.ts';
import styles from './odometer-chart.module.css';

interface ChartGroundProps {
  readonly curve: OdometerCurve;
  readonly scale: ChartScale;
  readonly today: LocalDate;
  readonly width: number;
}

/** What lies under the line: when the car rests, round distances and the months by name, and today. */
export function ChartGround({ curve, scale, today, width }: ChartGroundProps) {
  const words = useWords();
  const hatch = useId();
  const { x, y } = scale;
  const [left, right, top, bottom] = [MARGIN.left, width - MARGIN.right, MARGIN.top, HEIGHT - MARGIN.bottom];
  const inside = (date: LocalDate) => Math.min(right, Math.max(left, x(date)));
  return (
    <g aria-hidden="true">
      <pattern id={hatch} width={7} height={7} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width={7} height={7} className={styles.hatchGround} />
        <rect width={2} height={7} className={styles.hatch} />
      </pattern>
      {curve.resting.filter(({ to }) => to >= scale.from).map(({ from, to }) => (
        <rect key={from} x={inside(from)} width={Math.max(0, inside(addDays(to, 1)) - inside(from))} y={top} height={bottom - top} fill={`url(#${hatch})`} opacity={0.75} />
      ))}
      {scale.values.map((value) => (
        <g key={value}>
          <line className={styles.rule} x1={left} x2={right} y1={y(value)} y2={y(value)} />
          <text className={styles.name} x={left - 8} y={y(value) + 4} textAnchor="end">{sayNumber(value)}</text>
        </g>
      ))}
      {scale.dates.map((date) => (
        <g key={date}>
          <line className={styles.rule} x1={x(date)} x2={x(date)} y1={top} y2={bottom} />
          <text className={styles.name} x={x(date)} y={HEIGHT - 6} textAnchor="middle">{date.slice(5, 7) === '01' ? date.slice(0, 4) : words.monthName(date)}</text>
        </g>
      ))}
      <line className={styles.today} x1={x(today)} x2={x(today)} y1={top - 4} y2={bottom} />
    </g>
  );
}
