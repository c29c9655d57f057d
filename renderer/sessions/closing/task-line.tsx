import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { ClosingTask } from '../../../shared-core/views/closing-schema.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { minutesWords } from '../../ui/due-words.ts';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { isToldDone, type Outcome, type TaskChanges, type TaskDraft } from './closing-changes.ts';
import styles from './closing.module.css';

interface TaskLineProps {
  readonly task: ClosingTask;
  readonly draft: TaskDraft;
  readonly at: string;
  readonly place: (path: string) => FieldPlace;
  readonly currency: string;
  readonly onChange: (change: TaskChanges) => void;
}

const replaced = () => choices('outcome.', ['done', 'not-done']);
const checked = () => choices('outcome.', ['good', 'watch', 'acted', 'not-done']);

/** How one task went: what is left undone is free for another day. */
export function TaskLine(props: TaskLineProps) {
  const { task, draft, onChange } = props;
  const told = isToldDone(task, draft);
  const open = task.steps - task.ticked - task.leftOut;
  const counts = [tell('closing.ticked', { n: task.ticked, of: task.steps }), ...(task.leftOut > 0 ? [tell('closing.left-out', { n: task.leftOut })] : []), ...(task.ticked + task.leftOut > 0 && open > 0 ? [tell('closing.unticked', { n: open })] : [])];
  return (
    <div className={styles.task}>
      <div className={styles.taskHead}>
        <strong>{task.name}</strong>
        <span className={styles.soft}>{counts.join(' · ')}</span>
      </div>
      {task.task.kind === 'obligation' ? <Met {...props} /> : <Done {...props} />}
      {told && task.followUps.map((rule, index) => (
        <Checkbox key={index} label={tell('closing.follow-up', { text: rule.text, when: rule.when.text })} checked={draft.followUps[index] ?? false} onChange={(event) => onChange({ followUps: { ...Object.fromEntries(draft.followUps.map((one, own) => [own, one])), [index]: event.currentTarget.checked } })} />
      ))}
    </div>
  );
}

function Done({ task, draft, at, place, onChange }: TaskLineProps) {
  return (
    <div className={styles.fields}>
      <NativeSelect {...place(`${at}outcome`)} label={tell('record-form.outcome', { line: task.name })} description={draft.outcome === null ? tell('closing.choose-what') : undefined} value={draft.outcome ?? ''} data={[...(draft.outcome === null ? [{ value: '', label: tell('closing.choose') }] : []), ...(task.work === 'check' ? checked() : replaced())]} onChange={(event) => onChange({ outcome: event.currentTarget.value as Outcome })} />
      {draft.outcome !== 'not-done' && <TextInput {...place(`${at}minutes`)} label={tell('closing.minutes')} description={oddMinutes(task, draft.minutes)} aria-label={tell('closing.minutes-of', { task: task.name })} value={draft.minutes} inputMode="numeric" autoComplete="off" onChange={(event) => onChange({ minutes: event.currentTarget.value })} />}
      <TextInput label={tell(draft.outcome === 'not-done' ? 'closing.why-not' : 'closing.note')} aria-label={tell('closing.note-of', { task: task.name })} value={draft.note} maxLength={500} autoComplete="off" onChange={(event) => onChange({ note: event.currentTarget.value, noteOver: task.note })} />
    </div>
  );
}

/** Minutes far from what it took before are asked about; they are taken as they are. */
function oddMinutes({ asks }: ClosingTask, typed: string): string | undefined {
  const minutes = Number(typed);
  if (asks === null || typed.trim() === '' || (minutes >= asks.below && minutes <= asks.above)) return undefined;
  return tell('closing.minutes-odd', { likely: minutesWords(asks.likely) });
}

function Met({ task, draft, at, place, currency, onChange }: TaskLineProps) {
  return (
    <div className={styles.fields}>
      <Checkbox label={tell('closing.met')} aria-label={tell('closing.met-of', { task: task.name })} checked={draft.met} onChange={(event) => onChange({ met: event.currentTarget.checked })} />
      {draft.met && <DateField {...place(`${at}lastValidDay`)} label={tell('closing.valid')} description={tell('closing.valid-what')} value={draft.lastValidDay} onChange={(lastValidDay) => onChange({ lastValidDay })} />}
      {draft.met && <TextInput {...place(`${at}paid`)} label={tell('closing.paid', { currency })} value={draft.paid} inputMode="decimal" autoComplete="off" onChange={(event) => onChange({ paid: event.currentTarget.value })} />}
    </div>
  );
}
