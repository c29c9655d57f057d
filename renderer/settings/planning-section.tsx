import { Button } from '@mantine/core';
import { Link } from 'wouter';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

/** The way to everything that sessions are proposed by. */
export function PlanningSection() {
  return (
    <Section title={tell('sessions.title')}>
      <div className={styles.task}>
        <p>{tell('planning.open-what')}</p>
        <Button component={Link} href="/settings/planning" variant="default">{tell('planning.open')}</Button>
      </div>
    </Section>
  );
}
