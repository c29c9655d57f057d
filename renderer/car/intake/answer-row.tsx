import { useState, type KeyboardEvent } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { answersFor, asksWhen, firstAnswer, standing, type Answer, type IntakeItem } from './answers.ts';
import { focusBeside, focusRow } from './row-focus.ts';
import { standWords } from './stand-words.ts';
import { WhenForm } from './when-form.tsx';
import styles from './intake.module.css';

interface AnswerRowProps {
  readonly view: CarView;
  readonly item: IntakeItem;
  /** Where the focus goes once the row is answered; null: it stays. */
  readonly next: string | null;
  /** The answer whose button Tab stops at; null: Tab passes this row by. */
  readonly stop: Answer | null;
  readonly onStop: (answer: Answer) => void;
}

/** One item and the answers to it. A letter answers it, the arrows go along the row and from row to row; Tab leaves the rows. */
export function AnswerRow({ view, item, next, stop, onStop }: AnswerRowProps) {
  const words = useWords();
  const [when, setWhen] = useState<'proven' | 'said' | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const answers = answersFor(view.car);
  const chosen = standing(item);
  const first = firstAnswer(item, view.car);

  const done = (answer: Answer, undo: readonly number[]) => {
    setFault(null);
    setWhen(null);
    note(tell('intake.noted', { item: item.name, answer: tell(`answer.${answer}-what`) }), undo);
  };
  const give = async (answer: Answer) => {
    if (asksWhen(answer)) return setWhen(answer);
    // On at once: nobody waits for the answer to be written.
    if (next !== null) focusRow(next);
    const result = await change('intake.answer', { car: view.car.id, item: item.item, answer });
    if (result.ok) return done(answer, result.value.undo);
    setFault(sayFault(result.refusal));
    focusRow(item.item);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const answer = answers.find(({ key }) => key === event.key.toLowerCase())?.answer;
    if (answer === undefined && !focusBeside(event.currentTarget, event.key)) return;
    event.preventDefault();
    if (answer !== undefined) void give(answer);
  };

  return (
    <li className={styles.row} data-answer-row={item.item} data-open={item.question === 'open'}>
      <p className={styles.name}><strong>{item.name}</strong><br /><span className={item.question === 'open' ? styles.open : styles.stand}>{standWords(item, words)}</span></p>
      <div role="toolbar" aria-label={item.name} className={styles.answers} onKeyDown={onKeyDown}>
        {answers.map(({ answer, key }) => (
          <button
            key={answer}
            type="button"
            tabIndex={answer === stop ? 0 : -1}
            data-first={answer === first}
            aria-pressed={answer === chosen}
            aria-keyshortcuts={key}
            title={tell(`answer.${answer}-what`)}
            onFocus={() => onStop(answer)}
            onClick={() => void give(answer)}
          >
            {tell(`answer.${answer}`)}
          </button>
        ))}
      </div>
      <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault}</p>
      {when !== null && (
        <WhenForm
          key={when}
          view={view}
          item={item}
          answer={when}
          onAnswered={(undo) => {
            done(when, undo);
            focusRow(next ?? item.item);
          }}
          onCancel={() => {
            setWhen(null);
            focusRow(item.item);
          }}
        />
      )}
    </li>
  );
}
