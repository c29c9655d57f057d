import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { Asked } from '../../ui/asked.tsx';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './sheet.module.css';
import type { Task } from './sheet-types.ts';

interface BeginSheetProps {
  readonly task: Task;
  readonly onBegun: () => void;
}

/** The way to a sheet for a task that has none: a choice of starting sheets, the likely one first. */
export function BeginSheet({ task, onBegun }: BeginSheetProps) {
  const [open, setOpen] = useState(false);
  return (
    <div className={styles.screenOnly}>
      {!open && <Button variant="default" aria-label={tell('job.begin-of', { task: task.name })} onClick={() => setOpen(true)}>{tell('job.begin')}</Button>}
      {open && <Offered task={task} onBegun={onBegun} onClose={() => setOpen(false)} />}
    </div>
  );
}

function Offered(props: Omit<ChoiceProps, 'offered'>) {
  const answer = useAsk('sheets.starting', { item: props.task.task.id });
  return <Asked answer={answer}>{(offered) => <Choice {...props} offered={offered} />}</Asked>;
}

interface ChoiceProps extends BeginSheetProps {
  readonly offered: ReplyOf<'sheets.starting'>;
  readonly onClose: () => void;
}

function Choice({ task, offered: { suggested, sheets }, onBegun, onClose }: ChoiceProps) {
  const fitting = sheets.filter((one) => one.fits);
  const likelyFirst = [...fitting.filter((one) => one.key === suggested), ...fitting.filter((one) => one.key !== suggested)];
  const [key, setKey] = useState(likelyFirst[0]?.key ?? '');
  const [fault, setFault] = useState<string | null>(null);
  const chosen = likelyFirst.find((one) => one.key === key);
  const begin = async () => {
    const reply = await change('sheet.start', { item: task.task.id, from: key });
    if (!reply.ok) return setFault(sayFault(reply.refusal));
    note(tell('job.begun', { task: task.name, sheet: chosen?.name ?? '' }), reply.value.undo);
    onBegun();
  };
  return (
    <div className={styles.begin} role="group" aria-label={tell('job.begin-of', { task: task.name })}>
      <NativeSelect
        autoFocus
        label={tell('job.begin-from')}
        value={key}
        onChange={(event) => setKey(event.currentTarget.value)}
        data={likelyFirst.map((one) => ({ value: one.key, label: one.key === suggested ? tell('job.begin-likely', { sheet: one.name }) : one.name }))}
      />
      {chosen !== undefined && <p>{tell('job.begin-steps', { n: chosen.steps.length })}{chosen.by !== 'anyone' && <strong> {tell(`job.begin-${chosen.by}`)}</strong>}</p>}
      <p role="alert" className={fault === null ? 'only-said' : styles.late}>{fault}</p>
      <div className={styles.buttons}>
        <Button onClick={() => void begin()}>{tell('job.begin-it')}</Button>
        <Button variant="default" onClick={onClose}>{tell('job.begin-not')}</Button>
      </div>
    </div>
  );
}
