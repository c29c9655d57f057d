import { Button } from '@mantine/core';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import type { StepDraft } from './sheet-draft.ts';
import { stepButton } from './step-button.ts';
import styles from './editor.module.css';

/** What is asked about hazards of which a step speaks, as it was saved, until one of the steps typed here marks them. It is never refused. */
export function UnmarkedQuestion({ step, set }: { readonly step: StepDraft; readonly set: (change: Partial<StepDraft>) => void }) {
  const { editing, entry, focusNext } = useEditor();
  const saved = editing.sheet?.steps.find((one) => one.id === step.id);
  const marked = [...entry.draft.hazards, ...entry.draft.steps.flatMap((one) => one.hazards)];
  const asked = saved?.text === step.text ? editing.unmarked.filter((one) => one.step === step.id && !marked.includes(one.hazard)) : [];
  return asked.map(({ hazard, said }) => (
    <div key={hazard} className={styles.asked} role="group" aria-label={said.text}>
      <p>{said.text}</p>
      <div className={styles.buttons}>
        <Button
          size="compact-sm"
          onClick={() => {
            focusNext(stepButton(step.key, 'change'));
            set({ hazards: editing.hazards.map((one) => one.hazard).filter((one) => one === hazard || step.hazards.includes(one)) });
          }}
        >
          {tell('sheet-edit.mark', { hazard: editing.hazards.find((one) => one.hazard === hazard)?.name ?? hazard })}
        </Button>
      </div>
    </div>
  ));
}
