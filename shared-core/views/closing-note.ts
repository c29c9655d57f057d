import { say } from '../result/words/say.ts';
import { unitText } from '../units/unit-text.ts';
import type { DoingStep } from './doing-schema.ts';

const LONGEST_NOTE = 500;
const LONGEST_STEP = 60;

/**
 * What a task's line in the record says beside its outcome: the torques that were given, and the steps that were left out with their reason.
 * What was measured stands in measurements of its own.
 */
export function noteOfTask(task: string, steps: readonly DoingStep[]): string {
  const own = steps.filter((step) => step.of.some((ref) => ref.task === task));
  const torques = own.flatMap((step) => step.values.flatMap(({ read }) => (read.kind === 'torque' ? [say({ key: 'closing-torque', values: { name: read.name, value: `${read.typed.value} ${unitText(read.typed.unit)}` } })] : [])));
  const left = own.flatMap((step) => (step.tick?.as === 'left-out' ? [say({ key: 'closing-left-out', values: { step: shortened(step.text), why: step.tick.note } })] : []));
  return [...torques, ...left].join('; ').slice(0, LONGEST_NOTE).trim();
}

/** Cut between words. */
function shortened(text: string): string {
  if (text.length <= LONGEST_STEP) return text.replace(/\.$/, '');
  return `${text.slice(0, LONGEST_STEP).replace(/\s+\S*$/, '')} …`;
}
