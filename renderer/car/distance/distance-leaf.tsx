import { useState } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { OpenSheet } from '../car-sheet.ts';
import { AllowancesSection } from './allowances-section.tsx';
import type { DistanceSheet } from './distance-sheet.ts';
import { DistanceSheets } from './distance-sheets.tsx';
import { OdometerSection } from './odometer-section.tsx';
import { AllReadingsSection } from './all-readings-section.tsx';
import { RestSection } from './rest-section.tsx';
import { TrackSection } from './track-section.tsx';
import { UseSection } from './use-section.tsx';
import carStyles from '../car.module.css';

interface DistanceLeafProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** What was read of the car's odometer, what that says of its use, and how good the forecasts made of it were. */
export function DistanceLeaf({ view, open }: DistanceLeafProps) {
  const [sheet, setSheet] = useState<DistanceSheet | null>(null);
  const enterReading = () => open({ kind: 'reading' });
  return (
    <div className={carStyles.columns}>
      <div className={carStyles.column}>
        <OdometerSection view={view} onRead={enterReading} />
        <AllReadingsSection view={view} onRead={enterReading} open={setSheet} />
        <TrackSection track={view.trackRecord} />
      </div>
      <div className={carStyles.column}>
        <UseSection view={view} open={setSheet} />
        <RestSection view={view} open={setSheet} />
        <AllowancesSection view={view} open={setSheet} />
      </div>
      <DistanceSheets view={view} sheet={sheet} onClose={() => setSheet(null)} />
    </div>
  );
}
