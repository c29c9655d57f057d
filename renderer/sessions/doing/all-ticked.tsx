import { useId, type RefObject } from 'react';
import type { Doing } from '../../../shared-core/views/doing-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';

interface AllTickedProps {
  readonly doing: Doing;
  readonly cardRef: RefObject<HTMLElement | null>;
  readonly onClose: () => void;
}

/** Nothing is open any more: what is left is to write the record. */
export function AllTicked({ doing, cardRef, onClose }: AllTickedProps) {
  const id = useId();
  return (
    <section ref={cardRef} className={styles.card} tabIndex={-1} aria-labelledby={id}>
      <h2 id={id} className={styles.text}>{tell('doing.all-ticked', { n: doing.steps.length })}</h2>
      <p>{tell('doing.all-ticked-what')}</p>
      <div className={styles.buttons}><BigButton look="main" onPress={onClose}>{tell('doing.close')}</BigButton></div>
    </section>
  );
}
