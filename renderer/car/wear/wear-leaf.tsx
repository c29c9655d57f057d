import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { SeriesRow } from './series-row.tsx';
import { byPlace, MEASURE_KINDS, type MeasureKind } from './subject-words.ts';
import type { OpenWear, WearSheet } from './wear-sheet.ts';
import { WearSheets } from './wear-sheets.tsx';
import { WheelsSection } from './wheels-section.tsx';
import carStyles from '../car.module.css';
import sectionStyles from '../../ui/section.module.css';
import styles from './wear.module.css';

interface WearLeafProps {
  readonly view: CarView;
}

/** What was measured on a car, one sheet a kind, and its wheels beside. */
export function WearLeaf({ view }: WearLeafProps) {
  const [sheet, setSheet] = useState<WearSheet | null>(null);
  const kinds = MEASURE_KINDS.filter((kind) => view.measured.some((one) => one.what === kind));
  return (
    <>
      <div className={carStyles.columns}>
        <div className={carStyles.column}>
          {kinds.length === 0 ? <NothingMeasured open={setSheet} /> : <Top open={setSheet} />}
          {kinds.map((kind) => <KindSection key={kind} kind={kind} view={view} open={setSheet} />)}
        </div>
        <div className={carStyles.column}><WheelsSection view={view} open={setSheet} /></div>
      </div>
      <WearSheets view={view} sheet={sheet} onClose={() => setSheet(null)} />
    </>
  );
}

function NothingMeasured({ open }: { readonly open: OpenWear }) {
  return (
    <Section title={tell('wear.title')} add={{ label: tell('wear.measure'), onAdd: () => open({ kind: 'measure', what: 'tread', name: null }) }}>
      <p className={sectionStyles.soft}>{tell('wear.none')}</p>
    </Section>
  );
}

function Top({ open }: { readonly open: OpenWear }) {
  return (
    <div className={styles.top}>
      <Button onClick={() => open({ kind: 'measure', what: 'tread', name: null })}>{tell('wear.measure')}</Button>
      <p className={styles.key}>{tell('wear.key')}</p>
    </div>
  );
}

interface KindSectionProps {
  readonly kind: MeasureKind;
  readonly view: CarView;
  readonly open: OpenWear;
}

function KindSection({ kind, view, open }: KindSectionProps) {
  const { byName } = useWords();
  const what = tell(`measured.${kind}`);
  const title = what.charAt(0).toUpperCase() + what.slice(1);
  const series = view.measured.filter((one) => one.what === kind).sort(byPlace(byName));
  const isStored = (one: CarView['measured'][number]) => one.wheel !== null && one.place === null;
  const row = (one: CarView['measured'][number]) => <SeriesRow key={one.key} series={one} view={view} open={open} />;
  const [here, stored] = [series.filter((one) => !isStored(one)), series.filter(isStored)];
  return (
    <Section title={title} add={{ label: tell('wear.measure-kind', { what }), onAdd: () => open({ kind: 'measure', what: kind, name: null }) }}>
      {here.length > 0 && <ul className={sectionStyles.list}>{here.map(row)}</ul>}
      {stored.length > 0 && (
        <details className={styles.stored}>
          <summary>{tell('wear.stored', { n: stored.length })}</summary>
          <ul className={sectionStyles.list}>{stored.map(row)}</ul>
        </details>
      )}
    </Section>
  );
}
