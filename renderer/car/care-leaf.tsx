import type { CarView } from '../../shared-core/views/car-view.ts';
import type { OpenSheet } from './car-sheet.ts';
import { CostsSection } from './costs-section.tsx';
import { FollowUpsSection } from './follow-ups-section.tsx';
import { IntakeLine } from './intake/intake-line.tsx';
import { ItemsSection } from './items-section.tsx';
import { ObligationsSection } from './obligations-section.tsx';
import { ObservationsSection } from './observations-section.tsx';
import { RecallsSection } from './recalls-section.tsx';
import { ReadingsSection } from './readings-section.tsx';
import { RecordsSection } from './records-section.tsx';
import styles from './car.module.css';

interface CareLeafProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** What is due and what was done in the wide column, the car's dates, readings and costs beside. */
export function CareLeaf({ view, open }: CareLeafProps) {
  return (
    <div className={styles.columns}>
      <div className={styles.column}>
        <IntakeLine car={view.car.id} />
        <ItemsSection view={view} open={open} />
        <RecordsSection view={view} open={open} />
      </div>
      <div className={styles.column}>
        <ObligationsSection view={view} open={open} />
        <RecallsSection view={view} open={open} />
        <FollowUpsSection view={view} open={open} />
        <ReadingsSection view={view} open={open} />
        <ObservationsSection view={view} open={open} />
        <CostsSection view={view} />
      </div>
    </div>
  );
}
