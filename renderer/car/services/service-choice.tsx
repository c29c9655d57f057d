import { Button } from '@mantine/core';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './services.module.css';

interface ServiceChoiceProps {
  readonly all: CoverageView;
  readonly chosen: string | null;
  readonly onChoose: (service: string | null) => void;
  readonly onAdd: () => void;
}

/** The car's services by name, each with how far it is. */
export function ServiceChoice({ all, chosen, onChoose, onAdd }: ServiceChoiceProps) {
  const { done, lines } = all.counts;
  return (
    <div className={styles.choice}>
      <ul aria-label={tell('services.list')}>
        {all.plans.map((plan) => (
          <li key={plan.id}><Choice name={plan.name} done={plan.done} lines={plan.lines} chosen={plan.id === chosen} onChoose={() => onChoose(plan.id)} /></li>
        ))}
        <li><Choice name={tell('services.all')} done={done} lines={lines} chosen={chosen === null} onChoose={() => onChoose(null)} /></li>
      </ul>
      <Button variant="default" onClick={onAdd}>{tell('services.add')}</Button>
    </div>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly done: number;
  readonly lines: number;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

function Choice({ name, done, lines, chosen, onChoose }: ChoiceProps) {
  return (
    <button type="button" aria-pressed={chosen} className={styles.service} onClick={onChoose}>
      <span>{name}</span>
      <span className={styles.far}>{tell('services.done-of', { done, lines })}</span>
    </button>
  );
}
