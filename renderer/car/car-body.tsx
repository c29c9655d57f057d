import { useEffect, useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { CarHeading } from './car-heading.tsx';
import type { CarSheet } from './car-sheet.ts';
import { CarSheets } from './car-sheets.tsx';
import { CostsSection } from './costs-section.tsx';
import { ItemsSection } from './items-section.tsx';
import { ObligationsSection } from './obligations-section.tsx';
import { ObservationsSection } from './observations-section.tsx';
import { ReadingsSection } from './readings-section.tsx';
import { RecordsSection } from './records-section.tsx';
import styles from './car.module.css';

interface CarBodyProps {
  readonly view: CarView;
  readonly place: string | null;
}

/** One car: what is due and what was done in the wide column, its dates, readings and costs beside. */
export function CarBody({ view, place }: CarBodyProps) {
  const [sheet, setSheet] = useState<CarSheet | null>(null);
  useEffect(() => {
    const element = place === null ? null : document.getElementById(place);
    element?.scrollIntoView({ block: 'center' });
    element?.focus({ preventScroll: true });
  }, [place]);
  return (
    <>
      <CarHeading view={view} open={setSheet} />
      <div className={styles.columns}>
        <div className={styles.column}>
          <ItemsSection view={view} open={setSheet} />
          <RecordsSection view={view} open={setSheet} />
        </div>
        <div className={styles.column}>
          <ObligationsSection view={view} open={setSheet} />
          <ReadingsSection view={view} open={setSheet} />
          <ObservationsSection view={view} open={setSheet} />
          <CostsSection view={view} />
        </div>
      </div>
      <CarSheets view={view} sheet={sheet} onClose={() => setSheet(null)} />
    </>
  );
}
