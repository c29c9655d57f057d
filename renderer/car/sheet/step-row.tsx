import { ActionIcon, Button } from '@mantine/core';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import type { StepDraft } from './sheet-draft.ts';
import { stepButton } from './step-button.ts';
import { stepLines } from './step-figures.ts';
import { UnmarkedQuestion } from './unmarked-question.tsx';
import { StepQuestion } from './step-question.tsx';
import styles from './editor.module.css';

interface StepRowProps {
  readonly step: StepDraft;
  readonly at: number;
  readonly of: number;
  readonly onOpen: () => void;
  readonly onPlace: (at: number) => void;
  readonly onAddBelow: () => void;
  readonly onRemove: () => void;
  readonly set: (change: Partial<StepDraft>) => void;
}

/** One step as it reads, and what can be done with it. */
export function StepRow({ step, at, of, onOpen, onPlace, onAddBelow, onRemove, set }: StepRowProps) {
  const { editing, card } = useEditor();
  const lines = stepLines(card, step, { leftOver: (what) => editing.disposal.find((one) => one.what === what)?.name ?? what });
  const hazards = editing.hazards.filter(({ hazard }) => step.hazards.includes(hazard)).map(({ name }) => name);
  const n = at + 1;
  return (
    <>
      <div className={styles.stepText}>
        <p>{hazards.length > 0 && <strong className={styles.hazard}>{hazards.join(', ')}</strong>} {step.text.trim() === '' ? <em>{tell('sheet-edit.empty')}</em> : step.text}</p>
        {lines.map((line, one) => <p key={one} className={styles.line}>{line}</p>)}
        <StepQuestion step={step} set={set} onCorrect={onOpen} />
        <UnmarkedQuestion step={step} set={set} />
      </div>
      <div className={styles.stepButtons} role="group" aria-label={tell('sheet-edit.step', { n })}>
        <ActionIcon id={stepButton(step.key, 'up')} size="md" variant="default" aria-label={tell('sheet-edit.up-for', { n })} aria-disabled={at === 0} onClick={() => at > 0 && onPlace(at - 1)}><Arrow up /></ActionIcon>
        <ActionIcon id={stepButton(step.key, 'down')} size="md" variant="default" aria-label={tell('sheet-edit.down-for', { n })} aria-disabled={n === of} onClick={() => n < of && onPlace(at + 1)}><Arrow up={false} /></ActionIcon>
        <Button id={stepButton(step.key, 'change')} size="compact-sm" variant="default" aria-label={tell('sheet-edit.change-for', { n })} onClick={onOpen}>{tell('sheet-edit.change')}</Button>
        <Button size="compact-sm" variant="subtle" aria-label={tell('sheet-edit.add-below', { n })} onClick={onAddBelow}>{tell('sheet-edit.add-short')}</Button>
        <Button size="compact-sm" variant="subtle" aria-label={tell('sheet-edit.remove-for', { n })} onClick={onRemove}>{tell('sheet-edit.remove')}</Button>
      </div>
    </>
  );
}

function Arrow({ up }: { readonly up: boolean }) {
  return <svg width="14" height="14" viewBox="0 0 14 14" fill="none" stroke="currentColor" strokeWidth="1.8" strokeLinecap="round" strokeLinejoin="round" aria-hidden="true"><path d={up ? 'M7 12 V2 M3 6 L7 2 L11 6' : 'M7 2 V12 M3 8 L7 12 L11 8'} /></svg>;
}
