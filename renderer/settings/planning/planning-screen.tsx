import { useState } from 'react';
import { Link } from 'wouter';
import type { PlanningView } from '../../../shared-core/views/planning-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { CarPlanning } from './car-planning.tsx';
import { PlacesSection } from './places-section.tsx';
import { PlanForm } from './plan-form.tsx';
import type { PlanningSheet } from './planning-sheet.ts';
import { PlanningSheets } from './planning-sheets.tsx';
import styles from './planning.module.css';

/** Everything a plan goes by, to be changed by hand. */
export function PlanningScreen() {
  const answer = useAsk('planning.show', {});
  return (
    <div className={styles.screen}>
      <p><Link href="/settings">{tell('planning.back')}</Link></p>
      <ScreenTitle>{tell('planning.title')}</ScreenTitle>
      <Asked answer={answer}>{(view) => <Planning view={view} />}</Asked>
    </div>
  );
}

function Planning({ view }: { readonly view: PlanningView }) {
  const [sheet, setSheet] = useState<PlanningSheet | null>(null);
  return (
    <>
      <PlanForm view={view} />
      <PlacesSection view={view} open={setSheet} />
      {view.cars.map((car) => <CarPlanning key={car.id} car={car} open={setSheet} />)}
      <PlanningSheets view={view} sheet={sheet} onClose={() => setSheet(null)} />
    </>
  );
}
