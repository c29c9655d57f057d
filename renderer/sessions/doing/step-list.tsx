import type { Doing, DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { AmendObservation } from '../../ui/amend-observation.tsx';
import { tell } from '../../ui/words/tell.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';

interface StepListProps {
  readonly doing: Doing;
  readonly at: string | null;
  readonly onGo: (step: DoingStep) => void;
  readonly onClose: () => void;
}

/** All steps, folded away: how far each task is, and a way to any of them; the session can be closed before all is done. */
export function StepList({ doing, at, onGo, onClose }: StepListProps) {
  const open = doing.steps.filter((step) => step.tick === null).length;
  return (
    <>
      <p className={styles.soft} role="status">{[tell('doing.so-far', { n: doing.steps.length - open, of: doing.steps.length }), ...(doing.found.length === 0 ? [] : [tell('doing.found-so-far', { n: doing.found.length })])].join(' · ')}</p>
      {doing.found.length > 0 && (
        <ul className={styles.finds} aria-label={tell('doing.finds')}>
          {doing.found.map((seen) => <li key={seen.id}><span>{seen.text} <span className={styles.soft}>· {tell(`severity.${seen.severity}`)}</span></span> {seen.closedOn === null && <AmendObservation seen={seen} large />}</li>)}
        </ul>
      )}
      <details className={styles.list}>
        <summary>{tell('doing.all-steps')}</summary>
        <ol>
          {doing.steps.map((step) => (
            <li key={step.key}>
              <button type="button" aria-current={step.key === at ? 'step' : undefined} onClick={() => onGo(step)}>
                <span>{step.place}. {step.carName}: {step.text}</span>
                <span className={styles.soft}>{step.tick === null ? tell('doing.open') : step.tick.as === 'done' ? tell('doing.ticked') : tell('doing.left-out', { why: step.tick.note })}</span>
              </button>
            </li>
          ))}
        </ol>
      </details>
      {(open > 0 || at !== null) && <div className={styles.buttons}><BigButton onPress={onClose}>{tell(open > 0 ? 'doing.close-early' : 'doing.close')}</BigButton></div>}
    </>
  );
}
