import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { OpenSheet } from '../car-sheet.ts';
import { ReadingsSection } from '../readings-section.tsx';
import styles from '../car.module.css';

interface DistanceLeafProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** What was read of the car's odometer, and what that says of its use. */
export function DistanceLeaf({ view, open }: DistanceLeafProps) {
  return (
    <div className={styles.columns}>
      <div className={styles.column}>
        <ReadingsSection view={view} open={open} />
      </div>
    </div>
  );
}
