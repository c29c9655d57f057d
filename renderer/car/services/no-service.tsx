import { Button } from '@mantine/core';
import { tell } from '../../ui/words/tell.ts';
import { Section } from '../section.tsx';
import styles from '../car.module.css';

/** Said while the car has no service by name. */
export function NoService({ onAdd }: { readonly onAdd: () => void }) {
  return (
    <Section title={tell('services.none-title')}>
      <p className={styles.soft}>{tell('services.none')}</p>
      <Button onClick={onAdd}>{tell('services.add')}</Button>
    </Section>
  );
}
