import { useId } from 'react';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';
import { KIND_GROUPS, type KindGroup } from './kind-groups.ts';

/** A year as it is drawn. */
export interface DrawnYear {
  readonly year: number;
  readonly sums: Readonly<Record<KindGroup, number>>;
  readonly whole: boolean;
}

const [WIDTH, HEIGHT, TOP, BOTTOM] = [760, 240, 22, 26];

/** Columns of years, what they are made of one above the other; the numbers stand in the table below. */
export function YearChart({ years, label }: { readonly years: readonly DrawnYear[]; readonly label: string }) {
  const words = useWords();
  const pattern = useId().replace(/[^\w-]/g, '');
  const tops = years.map(({ sums }) => KIND_GROUPS.reduce((sum, group) => sum + Math.max(0, sums[group]), 0));
  const step = gridStep(Math.max(1, ...tops));
  const lines = Math.max(1, Math.ceil(Math.max(1, ...tops) / step));
  const height = (minor: number) => ((HEIGHT - TOP - BOTTOM) * minor) / (step * lines);
  const amounts = Array.from({ length: lines + 1 }, (_, at) => words.roundMoney(step * at));
  const left = leftOf(amounts);
  const slot = (WIDTH - left) / Math.max(1, years.length);
  const bar = Math.min(64, slot * 0.6);
  const base = HEIGHT - BOTTOM;
  return (
    <figure className={styles.figure}>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={styles.chart} role="img" aria-label={label}>
        <defs>{KIND_GROUPS.map((group) => <Hatch key={group} id={`${pattern}-${group}`} group={group} />)}</defs>
        {amounts.map((amount, at) => (
          <g key={at}>
            <line className={at === 0 ? styles.base : styles.grid} x1={left} x2={WIDTH} y1={base - height(step * at)} y2={base - height(step * at)} />
            <text x={left - 8} y={base - height(step * at) + 4} textAnchor="end">{amount}</text>
          </g>
        ))}
        {years.map(({ year, sums, whole }, at) => {
          const x = left + slot * at + (slot - bar) / 2;
          let below = base;
          return (
            <g key={year}>
              {KIND_GROUPS.filter((group) => sums[group] > 0).map((group) => {
                below -= height(sums[group]);
                return <rect key={group} className={styles[group]} x={x} y={below} width={bar} height={height(sums[group])} fill={`url(#${pattern}-${group})`} stroke="currentColor" {...(whole ? {} : { strokeDasharray: '4 3' })} />;
              })}
              <text className={styles.sum} x={x + bar / 2} y={below - 6} textAnchor="middle">{words.money(KIND_GROUPS.reduce((sum, group) => sum + sums[group], 0))}</text>
              <text x={x + bar / 2} y={HEIGHT - 8} textAnchor="middle">{whole ? year : tell('ledger.part-year', { year: String(year) })}</text>
            </g>
          );
        })}
      </svg>
      <ul className={styles.legend} aria-hidden="true">
        {KIND_GROUPS.filter((group) => years.some(({ sums }) => sums[group] > 0)).map((group) => (
          <li key={group}>
            <svg width="18" height="14" className={styles[group]}><rect x="0.5" y="0.5" width="17" height="13" fill={`url(#${pattern}-${group})`} stroke="currentColor" /></svg>
            {tell(`ledger-group.${group}`)}
          </li>
        ))}
      </ul>
    </figure>
  );
}

/** Parts are full, labour is striped, duties are dotted, the rest is hollow. */
function Hatch({ id, group }: { readonly id: string; readonly group: KindGroup }) {
  return (
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" className={styles[group]} patternTransform={group === 'labour' ? 'rotate(45)' : ''}>
      <rect width="6" height="6" fill="var(--sheet)" />
      {group === 'parts' && <rect width="6" height="6" fill="currentColor" />}
      {group === 'labour' && <rect width="3" height="6" fill="currentColor" />}
      {group === 'duties' && <circle cx="3" cy="3" r="1.3" fill="currentColor" />}
    </pattern>
  );
}

/** A round step that gives at most five lines. @example gridStep(104_000) //=> 25_000 */
export function gridStep(top: number): number {
  const ten = 10 ** Math.floor(Math.log10(Math.max(1, top / 5)));
  return [1, 2, 2.5, 5, 10].map((factor) => factor * ten).find((one) => Number.isInteger(one) && one * 5 >= top) ?? 10 * ten;
}

/** Room for the amounts beside the lines, the longest too. */
export function leftOf(amounts: readonly string[]): number {
  return Math.max(64, 16 + 7 * Math.max(...amounts.map((amount) => amount.length)));
}
