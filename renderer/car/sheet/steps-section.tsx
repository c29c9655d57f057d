import { Button } from '@mantine/core';
import { useState } from 'react';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import { emptyStep, type StepDraft } from './sheet-draft.ts';
import { StepForm } from './step-form.tsx';
import { stepButton } from './step-button.ts';
import { StepRow } from './step-row.tsx';
import styles from './editor.module.css';

const MOST_STEPS = 80;
const ADD = 'sheet-add-step';

/** A step that was taken out, and where it stood. */
interface Removed {
  readonly step: StepDraft;
  readonly at: number;
}

/** The steps in their order; each is changed where it stands. */
export function StepsSection() {
  const { entry, focusNext } = useEditor();
  const { steps } = entry.draft;
  const [opened, setOpened] = useState<readonly number[]>([]);
  const [removed, setRemoved] = useState<Removed | null>(null);
  const [moved, setMoved] = useState('');
  const path = entry.refusedAt ?? '';
  const refused = steps[Number(/^steps\.(\d+)/.exec(path)?.[1] ?? Number.NaN)]?.key;
  const isOpen = (key: number) => opened.includes(key) || key === refused;
  const textOf = (at: number) => entry.at(`steps.${at}.text`).id;

  const setStep = (key: number, some: Partial<StepDraft>) => entry.set({ steps: steps.map((step) => (step.key === key ? { ...step, ...some } : step)) });
  const onAdd = (at: number) => {
    const step = emptyStep(steps[at - 1]?.turn);
    setOpened([...opened, step.key]);
    setRemoved(null);
    focusNext(textOf(at));
    entry.rearrange({ steps: steps.toSpliced(at, 0, step) });
  };
  const onPlace = (step: StepDraft, from: number, to: number, focus: string) => {
    focusNext(focus);
    setRemoved(null);
    setMoved(tell('sheet-edit.moved', { n: to + 1, of: steps.length }));
    entry.rearrange({ steps: steps.toSpliced(from, 1).toSpliced(to, 0, step) });
  };
  const onRemove = (step: StepDraft, at: number) => {
    focusNext(stepButton(step.key, 'back'));
    setRemoved({ step, at });
    entry.rearrange({ steps: steps.toSpliced(at, 1) });
  };
  const onPutBack = ({ step, at }: Removed) => {
    focusNext(stepButton(step.key, 'change'));
    setRemoved(null);
    entry.rearrange({ steps: steps.toSpliced(at, 0, step) });
  };
  const onDone = (key: number) => {
    focusNext(stepButton(key, 'change'));
    setOpened(opened.filter((one) => one !== key));
    if (key === refused) entry.rearrange({});
  };
  const gone = (at: number) => removed !== null && removed.at === at && <Gone removed={removed} onPutBack={() => onPutBack(removed)} />;

  return (
    <Section title={tell('job.steps')}>
      <p className="only-said" role="status">{moved}</p>
      {entry.at('steps').error !== undefined && path === 'steps' && <p className={styles.fault}>{entry.at('steps').error}</p>}
      <ol className={styles.steps}>
        {steps.map((step, at) => (
          <li key={step.key} className={styles.step} data-open={isOpen(step.key)}>
            {gone(at)}
            {(at === 0 || steps[at - 1]?.turn !== step.turn) && <p className={styles.turn}>{tell(`turn.${step.turn}`)}</p>}
            <span className={styles.number} aria-hidden="true">{at + 1}</span>
            {isOpen(step.key)
              ? <StepForm step={step} at={at} of={steps.length} set={(some) => setStep(step.key, some)} onPlace={(to) => onPlace(step, at, to, `${entry.at(`steps.${to}`).id}-place`)} onDone={() => onDone(step.key)} />
              : <StepRow step={step} at={at} of={steps.length} set={(some) => setStep(step.key, some)} onOpen={() => { setOpened([...opened, step.key]); focusNext(textOf(at)); }} onPlace={(to) => onPlace(step, at, to, stepButton(step.key, to < at ? 'up' : 'down'))} onAddBelow={() => onAdd(at + 1)} onRemove={() => onRemove(step, at)} />}
          </li>
        ))}
      </ol>
      {gone(steps.length)}
      {steps.length < MOST_STEPS && <Button id={ADD} variant="default" onClick={() => onAdd(steps.length)}>{tell(steps.length === 0 ? 'sheet-edit.first' : 'sheet-edit.add')}</Button>}
    </Section>
  );
}

/** What was taken out, in its place, until something else is done. */
function Gone({ removed, onPutBack }: { readonly removed: Removed; readonly onPutBack: () => void }) {
  const text = removed.step.text.trim() === '' ? tell('sheet-edit.empty') : removed.step.text;
  return (
    <div className={styles.gone}>
      <p>{tell('sheet-edit.removed', { text })}</p>
      <Button id={stepButton(removed.step.key, 'back')} size="compact-sm" variant="default" onClick={onPutBack}>{tell('sheet-edit.put-back')}</Button>
    </div>
  );
}
