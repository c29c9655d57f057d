import { useWords } from '../../ui/household.tsx';
import styles from '../ledger.module.css';
import { gridStep, leftOf } from '../costs/year-chart.tsx';

/** A stretch of time with its band. */
export interface DrawnBand {
  readonly name: string;
  readonly lowMinor: number;
  readonly likelyMinor: number;
  readonly highMinor: number;
}

const [WIDTH, HEIGHT, TOP, BOTTOM] = [760, 240, 22, 26];

/** Bands of sums side by side, each from its low to its high end and broadest where likely, as windows are drawn; the numbers stand in the table below. */
export function BandChart({ bands, label }: { readonly bands: readonly DrawnBand[]; readonly label: string }) {
  const words = useWords();
  const top = Math.max(1, ...bands.map((one) => one.highMinor));
  const step = gridStep(top);
  const lines = Math.max(1, Math.ceil(top / step));
  const base = HEIGHT - BOTTOM;
  const at = (minor: number) => base - ((base - TOP) * minor) / (step * lines);
  const amounts = Array.from({ length: lines + 1 }, (_, line) => words.roundMoney(step * line));
  const left = leftOf(amounts);
  const slot = (WIDTH - left) / Math.max(1, bands.length);
  const half = Math.min(22, slot * 0.28);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={styles.chart} role="img" aria-label={label}>
      {amounts.map((amount, line) => (
        <g key={line}>
          <line className={line === 0 ? styles.base : styles.grid} x1={left} x2={WIDTH} y1={at(step * line)} y2={at(step * line)} />
          <text x={left - 8} y={at(step * line) + 4} textAnchor="end">{amount}</text>
        </g>
      ))}
      {bands.map(({ name, lowMinor, likelyMinor, highMinor }, index) => {
        const x = left + slot * index + slot / 2;
        return (
          <g key={name}>
            <path className={styles.band} d={`M${x - 3} ${at(highMinor)} H${x + 3} L${x + half} ${at(likelyMinor)} L${x + 3} ${at(lowMinor)} H${x - 3} L${x - half} ${at(likelyMinor)} Z`} />
            <line className={styles.likely} x1={x - half} x2={x + half} y1={at(likelyMinor)} y2={at(likelyMinor)} />
            <text className={styles.sum} x={x} y={at(highMinor) - 6} textAnchor="middle">{words.money(likelyMinor)}</text>
            <text x={x} y={HEIGHT - 8} textAnchor="middle">{name}</text>
          </g>
        );
      })}
    </svg>
  );
}
