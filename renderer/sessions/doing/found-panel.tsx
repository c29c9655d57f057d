import { TextInput } from '@mantine/core';
import { useId, useState } from 'react';
import type { DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';

interface FoundPanelProps {
  readonly session: string;
  readonly step: DoingStep;
  readonly onEnd: () => void;
}

/** Something found: how grave it is says when it is looked at again. Words are welcome, and not waited for. */
export function FoundPanel({ session, step, onEnd }: FoundPanelProps) {
  const id = useId();
  const words = useWords();
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string | undefined>(undefined);
  const write = async (severity: 'watch' | 'soon' | 'unsafe') => {
    const [at] = step.of;
    if (at === undefined) return;
    const reply = await change('work.find', { session, at, stepText: step.text.slice(0, 250), severity, text });
    if (!reply.ok) return setFault(sayFault(reply.refusal));
    const { observation, undo } = reply.value;
    note(tell('doing.found-done', { text: observation.text, date: words.date(observation.recheckOn ?? observation.date) }), undo);
    onEnd();
  };
  return (
    <form
      className={styles.panel}
      aria-labelledby={id}
      onSubmit={(event) => { event.preventDefault(); void write('watch'); }}
      onKeyDown={(event) => event.key === 'Escape' && onEnd()}
    >
      <h3 id={id}>{tell('doing.found')}</h3>
      <TextInput size="lg" autoFocus label={tell('doing.found-text')} description={tell('doing.found-text-what')} value={text} error={fault} maxLength={300} autoComplete="off" onChange={(event) => setText(event.currentTarget.value)} />
      <div className={styles.buttons}>
        <BigButton submits>{tell('doing.found-watch')}</BigButton>
        <BigButton onPress={() => void write('soon')}>{tell('doing.found-soon')}</BigButton>
        <BigButton onPress={() => void write('unsafe')}>{tell('doing.found-unsafe')}</BigButton>
      </div>
      <div className={styles.buttons}><BigButton onPress={onEnd}>{tell('doing.found-none')}</BigButton></div>
    </form>
  );
}
