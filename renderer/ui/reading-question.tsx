import { Button, TextInput } from '@mantine/core';
import { useId, useState } from 'react';
import type { DoubtfulView } from '../../shared-core/views/due-view.ts';
import { change } from './change.ts';
import { FieldsRead } from './form/read-fields.ts';
import { sayFault } from './form/say-fault.ts';
import { useWords } from './household.tsx';
import { note } from './notices/notice-store.ts';
import styles from './reading-question.module.css';
import { tell } from './words/tell.ts';

export type DoubtfulReading = Pick<DoubtfulView, 'reading' | 'date' | 'value' | 'unit' | 'text' | 'repairs'>;
type Verdict = 'right' | 'wrong' | 'corrected' | 'replaced';

interface ReadingQuestionProps {
  readonly car: string;
  readonly doubtful: DoubtfulReading;
  readonly onSettled?: () => void;
}

/** Asks what a doubtful reading was: each answer is one press. Nothing is changed until one is given. */
export function ReadingQuestion({ car, doubtful, onSettled }: ReadingQuestionProps) {
  const words = useWords();
  const id = useId();
  const [fault, setFault] = useState<string | null>(null);
  const [other, setOther] = useState<string | null>(null);
  const say = (value: number) => words.distance(value, doubtful.unit);

  const settle = async (verdict: Verdict, value?: number) => {
    const result = await change('reading.settle', { reading: doubtful.reading, verdict, ...(value === undefined ? {} : { value }) });
    if (!result.ok) return setFault(sayFault(result.refusal));
    note(tell(`reading.settled-${verdict}`, { car, value: value === undefined ? '' : say(value) }), result.value.undo);
    onSettled?.();
  };
  const settleOther = () => {
    const read = new FieldsRead();
    const value = read.number('value', other ?? '');
    const whole = read.whole(value);
    if (whole.ok) void settle('corrected', value);
    else setFault(sayFault(whole.refusal));
  };

  return (
    <div className={styles.question} role="group" aria-labelledby={id}>
      <p id={id}>{tell('reading.question', { value: say(doubtful.value), date: words.date(doubtful.date), doubt: doubtful.text })}</p>
      <div className={styles.answers}>
        {doubtful.repairs.map((value) => (
          <Button key={value} size="compact-sm" onClick={() => void settle('corrected', value)}>{tell('reading.it-was', { value: say(value) })}</Button>
        ))}
        <Button size="compact-sm" variant="default" onClick={() => void settle('right')}>{tell('reading.right')}</Button>
        <Button size="compact-sm" variant="default" onClick={() => setOther(other === null ? '' : null)} aria-expanded={other !== null}>{tell('reading.other')}</Button>
        <Button size="compact-sm" variant="default" onClick={() => void settle('replaced')}>{tell('reading.replaced')}</Button>
        <Button size="compact-sm" variant="default" onClick={() => void settle('wrong')}>{tell('reading.wrong')}</Button>
      </div>
      {other !== null && (
        <div className={styles.other}>
          <TextInput label={tell('reading.other-value')} value={other} inputMode="numeric" data-autofocus onChange={(event) => setOther(event.currentTarget.value)} onKeyDown={(event) => event.key === 'Enter' && settleOther()} />
          <Button onClick={settleOther}>{tell('reading.record-other')}</Button>
        </div>
      )}
      <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault}</p>
    </div>
  );
}
