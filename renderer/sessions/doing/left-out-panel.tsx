import { TextInput } from '@mantine/core';
import { useState } from 'react';
import type { DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { tell } from '../../ui/words/tell.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';

interface LeftOutPanelProps {
  readonly session: string;
  readonly step: DoingStep;
  readonly onDone: () => void;
  readonly onEnd: () => void;
}

/** Why a step is left out: it stands in the record. */
export function LeftOutPanel({ session, step, onDone, onEnd }: LeftOutPanelProps) {
  const [why, setWhy] = useState('');
  const [fault, setFault] = useState<string | undefined>(undefined);
  const write = async () => {
    const reply = await change('work.tick', { session, of: step.of, as: 'left-out', note: why });
    if (reply.ok) onDone();
    else setFault(sayFault(reply.refusal));
  };
  return (
    <form className={styles.panel} onSubmit={(event) => { event.preventDefault(); void write(); }} onKeyDown={(event) => event.key === 'Escape' && onEnd()}>
      <TextInput size="lg" autoFocus label={tell('doing.leave-out-why')} value={why} error={fault} maxLength={300} autoComplete="off" onChange={(event) => setWhy(event.currentTarget.value)} />
      <div className={styles.buttons}>
        <BigButton look="main" submits>{tell('doing.leave-out')}</BigButton>
        <BigButton onPress={onEnd}>{tell('form.cancel')}</BigButton>
      </div>
    </form>
  );
}
