import { SegmentedControl, useMantineColorScheme, type MantineColorScheme } from '@mantine/core';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

const SCHEMES: readonly MantineColorScheme[] = ['auto', 'light', 'dark'];

/** Light or dark paper. */
export function LookSection() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  return (
    <Section title={tell('settings.look')}>
      <p className={styles.soft}>{tell('settings.look-what')}</p>
      <SegmentedControl<MantineColorScheme> aria-label={tell('settings.scheme')} value={colorScheme} onChange={setColorScheme} data={SCHEMES.map((value) => ({ value, label: tell(`scheme.${value}`) }))} />
    </Section>
  );
}
