import { Button } from '@mantine/core';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import type { StepDraft } from './sheet-draft.ts';
import { stepButton } from './step-button.ts';
import { useQuestion } from './use-question.ts';
import styles from './editor.module.css';

interface StepQuestionProps {
  readonly step: StepDraft;
  readonly set: (change: Partial<StepDraft>) => void;
  readonly onCorrect: () => void;
}

/** What is asked about a step's own torques. They stand as they were entered, whatever is answered or not. */
export function StepQuestion({ step, set, onCorrect }: StepQuestionProps) {
  const question = useQuestion();
  const { focusNext } = useEditor();
  const asked = step.torques.flatMap((torque) => {
    const text = question(step, torque);
    return text === null ? [] : [{ torque, text }];
  });
  return asked.map(({ torque, text }) => (
    <div key={torque.key} className={styles.asked} role="group" aria-label={torque.name}>
      <p>{text}</p>
      <div className={styles.buttons}>
        <Button
          size="compact-sm"
          aria-label={tell('sheet-edit.sure-for', { name: torque.name })}
          onClick={() => {
            focusNext(stepButton(step.key, 'change'));
            set({ torques: step.torques.map((one) => (one.key === torque.key ? { ...one, sure: true } : one)) });
          }}
        >
          {tell('sheet-edit.sure')}
        </Button>
        <Button size="compact-sm" variant="default" aria-label={tell('card.correct-for', { name: torque.name })} onClick={onCorrect}>{tell('card.correct')}</Button>
      </div>
    </div>
  ));
}
