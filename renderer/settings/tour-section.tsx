import { Button } from '@mantine/core';
import { useLocation } from 'wouter';
import { Section } from '../ui/section.tsx';
import { showTour } from '../ui/tour-store.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

/** The look around once more. */
export function TourSection() {
  const [, go] = useLocation();
  const begin = () => {
    go('/');
    showTour(0);
  };
  return (
    <Section title={tell('tour.again')}>
      <p className={styles.soft}>{tell('tour.again-what')}</p>
      <Button variant="default" onClick={begin}>{tell('tour.offer')}</Button>
    </Section>
  );
}
