import { LookSection } from './look-section.tsx';
import { HouseholdSection } from './household-section.tsx';
import { DataSection } from './data-section.tsx';
import { KeysSection } from './keys-section.tsx';
import { TourSection } from './tour-section.tsx';
import { PlanningSection } from './planning-section.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

interface SettingsScreenProps {
  readonly folder: string;
  readonly sample: boolean;
}

/** The household's own settings, how it looks, and what is kept of it. */
export function SettingsScreen({ folder, sample }: SettingsScreenProps) {
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('settings.title')}</ScreenTitle>
      <HouseholdSection />
      <PlanningSection />
      <LookSection />
      <KeysSection />
      <TourSection />
      <DataSection folder={folder} sample={sample} />
    </div>
  );
}
