import { Button } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import type { Refusal } from '../../shared-core/result/result.ts';
import { call } from '../bridge/call.ts';
import { onPush } from '../bridge/pushes.ts';
import { change } from './change.ts';
import { sayFault } from './form/say-fault.ts';
import styles from './open-sample.module.css';
import { tell } from './words/tell.ts';

interface OpenSampleProps {
  readonly variant: 'filled' | 'default';
  readonly onOpened?: () => Promise<void>;
}

interface Opening {
  readonly done: number;
  /** Null until the host has told. */
  readonly total: number | null;
  readonly stopping: boolean;
}

/** Opens the sample household; how far it is stands beside the button while it is written, with the way to stop it. */
export function OpenSample({ variant, onOpened }: OpenSampleProps) {
  const [opening, setOpening] = useState<Opening | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const button = useRef<HTMLButtonElement>(null);
  const job = useRef('');

  const open = async () => {
    if (opening !== null) return;
    job.current = `sample ${Date.now()}`;
    setRefusal(null);
    setOpening({ done: 0, total: null, stopping: false });
    const stopHearing = onPush((push) => push.kind === 'job-progress' && push.job === job.current && setOpening((now) => now && { ...now, done: push.done, total: push.total }));
    const result = await change('sample.open', { job: job.current });
    stopHearing();
    setOpening(null);
    if (result.ok) return onOpened?.();
    setRefusal(result.refusal);
  };
  // The button that stopped it is gone, and the focus with it.
  useEffect(() => {
    if (refusal !== null && document.activeElement === document.body) button.current?.focus();
  }, [refusal]);
  const stop = () => {
    setOpening((now) => now && { ...now, stopping: true });
    void call('job.stop', { job: job.current });
  };

  return (
    <>
      <Button ref={button} variant={variant} onClick={() => void open()} aria-disabled={opening !== null}>{tell('start.sample-open')}</Button>
      <p role="status" className={opening === null ? 'only-said' : ''}>{opening !== null && tell(opening.stopping ? 'start.sample-stopping' : 'start.sample-opening')}</p>
      {opening !== null && (
        <div className={styles.far}>
          <progress aria-label={tell('start.sample-opening')} {...(opening.total === null ? {} : { value: opening.done, max: opening.total })} />
          <span aria-hidden="true">{opening.total !== null && tell('start.sample-far', { done: opening.done, total: opening.total })}</span>
          <Button variant="default" size="compact-md" onClick={stop} aria-disabled={opening.stopping}>{tell('start.sample-stop')}</Button>
        </div>
      )}
      <p role="alert" className={refusal === null ? 'only-said' : styles.fault}>{refusal !== null && sayFault(refusal)}</p>
    </>
  );
}
