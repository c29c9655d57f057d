import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import type { OpenSheet } from '../car-sheet.ts';
import { ExtrasSection } from './extras-section.tsx';
import { LinesSection } from './lines-section.tsx';
import type { OpenServicesSheet } from './services-sheet.ts';
import { WatchedSection } from './watched-section.tsx';
import styles from '../car.module.css';

interface CoverageColumnsProps {
  readonly coverage: CoverageView;
  readonly open: OpenSheet;
  readonly openOwn: OpenServicesSheet;
}

/** The lines in the wide column; what is to be watched of them, and what was done beside them, next to it. */
export function CoverageColumns({ coverage, open, openOwn }: CoverageColumnsProps) {
  // Where nothing was named or done there is nothing to say beside it either.
  if (coverage.lines.length + coverage.watched.length + coverage.extras.length === 0) return <LinesSection coverage={coverage} openOwn={openOwn} />;
  return (
    <div className={styles.columns}>
      <div className={styles.column}>
        <LinesSection coverage={coverage} openOwn={openOwn} />
      </div>
      <div className={styles.column}>
        <WatchedSection watched={coverage.watched} today={coverage.today} open={open} />
        <ExtrasSection extras={coverage.extras} />
      </div>
    </div>
  );
}
