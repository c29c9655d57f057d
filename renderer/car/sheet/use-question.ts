import { useEditor } from './editor-context.ts';
import type { StepDraft, TorqueDraft } from './sheet-draft.ts';

/** What is asked about a torque of the keeper's own as it was saved; null once it is another, or the keeper is sure. */
export function useQuestion(): (step: StepDraft, torque: TorqueDraft) => string | null {
  const { editing } = useEditor();
  return (step, torque) => {
    if (torque.by !== 'own' || torque.sure || step.id === null) return null;
    const saved = editing.sheet?.steps.find((one) => one.id === step.id)?.torques.find((one) => one.by === 'own' && one.name === torque.name);
    if (saved === undefined || saved.by !== 'own') return null;
    const { typed, on } = saved;
    const stands = String(typed.value) === torque.value && typed.unit === torque.unit && (on.thread ?? '') === torque.thread && (on.strength ?? '') === torque.strength && (on.seat ?? '') === torque.seat && on.joint === torque.joint;
    return stands ? (editing.questions.find((one) => one.step === step.id && one.torque === torque.name)?.said.text ?? null) : null;
  };
}
