import { Button } from '@mantine/core';
import { useId, useState } from 'react';
import type { FigureView } from '../../../shared-core/views/card-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { comparedFigure } from './figure-draft.ts';
import styles from './card.module.css';

interface FigureQuestionProps {
  readonly car: string;
  readonly figure: FigureView;
  readonly text: string;
  readonly onChange: () => void;
  readonly onAnswered: () => void;
}

/** Asks about an unlikely torque. It stands as it was entered, whatever is answered or not. */
export function FigureQuestion({ car, figure, text, onChange, onAnswered }: FigureQuestionProps) {
  const id = useId();
  const [fault, setFault] = useState<string | null>(null);
  const { name } = figure;
  const answer = async () => {
    const compared = comparedFigure(car, figure);
    if (compared === null) return;
    const result = await change('card.set', compared);
    if (!result.ok) return setFault(sayFault(result.refusal));
    note(tell('card.sure-done', { name }), result.value.undo);
    onAnswered();
  };
  return (
    <div className={styles.question} role="group" aria-labelledby={id}>
      <p id={id}>{text}</p>
      <div className={styles.answers}>
        <Button id={questionOf(figure.key)} size="compact-sm" onClick={() => void answer()} aria-label={tell('card.sure-for', { name })}>{tell('card.sure')}</Button>
        <Button size="compact-sm" variant="default" onClick={onChange} aria-label={tell('card.correct-for', { name })}>{tell('card.correct')}</Button>
      </div>
      <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault}</p>
    </div>
  );
}

/** The id of the first answer to what is asked about a figure. */
export function questionOf(key: string): string {
  return `question-${key}`;
}
