import type { DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './doing.module.css';

interface WrittenProps {
  readonly text: string;
  readonly step: DoingStep;
  /** The id of the value that stands. */
  readonly value: string | undefined;
}

/** What was written down at a step, and what is asked about it where it is unlikely. */
export function Written({ text, step, value }: WrittenProps) {
  const asked = step.questions.find((one) => one.value === value);
  return (
    <div role="status">
      <p className={styles.written}>{tell('doing.written', { value: text })}</p>
      {asked !== undefined && <p className={styles.fault}>{asked.said.text}</p>}
    </div>
  );
}
