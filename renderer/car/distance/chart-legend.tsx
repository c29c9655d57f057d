import type { ReactNode } from 'react';
import type { OdometerCurve } from '../../../shared-core/views/odometer-curve.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './odometer-chart.module.css';

/** What the signs of the drawing mean; only those that are on it. */
export function ChartLegend({ curve }: { readonly curve: OdometerCurve }) {
  return (
    <ul className={styles.legend} aria-label={tell('chart.legend')}>
      <Sign text={tell('chart.readings')}><path className={styles.line} d="M1 8 L23 4" /><circle className={styles.point} cx={12} cy={6} r={3} /></Sign>
      <Sign text={tell('chart.foreseen')}><path className={styles.fan} d="M1 6 L23 0 L23 12 Z" /><path className={styles.foreseen} d="M1 6 L23 6" /></Sign>
      <Sign text={tell('chart.today')}><line className={styles.today} x1={12} x2={12} y1={0} y2={12} /></Sign>
      {curve.doubtful.length > 0 && <Sign text={tell('chart.doubtful')}><text className={styles.doubtful} x={12} y={11} textAnchor="middle">?</text></Sign>}
      {curve.replaced.length > 0 && <Sign text={tell('chart.replaced')}><path className={styles.replaced} d="M12 0.5 L17.5 6 L12 11.5 L6.5 6 Z" /></Sign>}
      {curve.resting.length > 0 && <Sign text={tell('chart.resting')}><rect className={styles.hatch} x={1} y={1} width={22} height={10} /></Sign>}
    </ul>
  );
}

function Sign({ text, children }: { readonly text: string; readonly children: ReactNode }) {
  return <li><svg width={24} height={12} aria-hidden="true">{children}</svg>{text}</li>;
}
