import { Button } from '@mantine/core';
import { say } from '../../../shared-core/result/words/say.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { PointList } from './point-list.tsx';
import { joined, SeriesVerdict } from './series-verdict.tsx';
import { subjectOf, whichOf } from './subject-words.ts';
import { valueText } from './value-words.ts';
import { WearChart } from './wear-chart.tsx';
import { measureAgain, type OpenWear } from './wear-sheet.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './wear.module.css';
import tones from '../../ui/tones.module.css';

interface SeriesRowProps {
  readonly series: WearSeriesView;
  readonly view: CarView;
  readonly open: OpenWear;
}

/** One thing that was measured: its newest value, what that comes to, the chart, and each measurement. */
export function SeriesRow({ series, view, open }: SeriesRowProps) {
  const { items, today, car } = view;
  const subject = subjectOf(series);
  // What there is only once has the heading of its sheet.
  const title = series.name ?? whichOf(series);
  return (
    <li className={styles.series} id={`wear-${series.key}`} tabIndex={-1} data-place>
      <div className={styles.words}>
        {title !== '' && <h3>{title}</h3>}
        <Newest series={series} />
        {series.limits.map((verdict) => <SeriesVerdict key={`${verdict.value} ${verdict.from}`} verdict={verdict} items={items} today={today} />)}
        {series.limits.length === 0 && <p><strong>{tell('wear.no-limit')}.</strong> <span className={sectionStyles.small}>{tell('wear.no-limit-what')}</span></p>}
        {series.laws !== null && <Laws laws={series.laws} />}
      </div>
      <div className={styles.chart}>
        <WearChart series={series} today={today} />
        <div className={styles.rowActions}>
          <Button size="compact-sm" variant="default" aria-label={tell('wear.measure-again-of', { subject })} onClick={() => open(measureAgain(series))}>{tell('wear.measure-again')}</Button>
          <Button size="compact-sm" variant="subtle" aria-label={tell('wear.limit-of', { subject })} onClick={() => open({ kind: 'limit', series: series.key })}>{tell('wear.limit')}</Button>
        </div>
      </div>
      <details className={styles.points}>
        <summary>{tell('wear.points', { n: series.points.length })}<span className="only-said">{tell('wear.of', { subject })}</span></summary>
        <PointList series={series} unit={car.unit} open={open} />
      </details>
    </li>
  );
}

function Newest({ series }: { readonly series: WearSeriesView }) {
  const words = useWords();
  const newest = series.points.findLast((point) => point.part === 'counts')?.measurement;
  if (newest === undefined) return <p className={sectionStyles.small}>{tell('wear.nothing-counts')}</p>;
  return <p><span className={styles.figure}>{valueText(newest.typed)}</span> <span className={sectionStyles.small}>{tell('wear.newest', { date: words.date(newest.date) })}</span></p>;
}

/** Each law by name only where one is failed: who passes both need not read whose they are. */
function Laws({ laws }: { readonly laws: NonNullable<WearSeriesView['laws']> }) {
  const of = (passes: boolean) => laws.filter((one) => one.passes === passes);
  const named = (list: typeof laws) => joined(list.map(({ law }) => say({ key: law, values: {} })));
  const [passed, failed] = [of(true), of(false)];
  if (failed.length === 0) return passed.length === 0 ? null : <p className={sectionStyles.small}>{tell('wear.laws-all', { laws: joined(passed.map((one) => valueText(one.limit))) })}</p>;
  return (
    <p className={sectionStyles.small}>
      <strong className={tones.late}>{tell('wear.laws-failed', { laws: named(failed) })}</strong> {passed.length > 0 && tell('wear.laws-passed', { laws: named(passed) })}
    </p>
  );
}
