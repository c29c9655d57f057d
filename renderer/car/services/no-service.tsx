import { Button } from '@mantine/core';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';

/** Said while the car has no service by name. */
export function NoService({ onAdd }: { readonly onAdd: () => void }) {
  return (
    <Section title={tell('services.none-title')}>
      <p className={sectionStyles.soft}>{tell('services.none')}</p>
      <Button onClick={onAdd}>{tell('services.add')}</Button>
    </Section>
  );
}
