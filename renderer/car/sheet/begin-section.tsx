import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { Asked } from '../../ui/asked.tsx';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { Section } from '../../ui/section.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import type { Editing } from './sheet-draft.ts';
import styles from './editor.module.css';

/** What of a copied sheet stayed behind. */
export type LeftOut = ReplyOf<'sheet.copy'>['leftOut'];

interface BeginSectionProps {
  readonly editing: Editing;
  /** The sheet stands from now on as it was begun. */
  readonly onBegun: (leftOut: LeftOut | null) => void;
}

/** The ways to a sheet: from a starting sheet, or from that of the same task on another car. */
export function BeginSection({ editing, onBegun }: BeginSectionProps) {
  const answer = useAsk('sheets.starting', { item: editing.item });
  const ways = <Asked answer={answer}>{(offered) => <Ways editing={editing} offered={offered} onBegun={onBegun} />}</Asked>;
  if (editing.sheet === null) return <Section title={tell('sheet-edit.begin')} hint={tell('sheet-edit.begin-what')}>{ways}</Section>;
  return (
    <details className={styles.fold}>
      <summary>{tell('sheet-edit.begin-anew')}</summary>
      <div className={styles.inner}>
        <p className={styles.soft}>{tell('sheet-edit.begin-anew-what')}</p>
        {ways}
      </div>
    </details>
  );
}

function Ways({ editing, offered: { suggested, sheets }, onBegun }: BeginSectionProps & { readonly offered: ReplyOf<'sheets.starting'> }) {
  const fitting = sheets.filter((one) => one.fits);
  const likelyFirst = [...fitting.filter((one) => one.key === suggested), ...fitting.filter((one) => one.key !== suggested)];
  const [from, setFrom] = useState(likelyFirst[0]?.key ?? '');
  const [other, setOther] = useState(editing.elsewhere[0]?.item ?? '');
  const [fault, setFault] = useState<string | null>(null);
  const chosen = likelyFirst.find((one) => one.key === from);
  const copied = editing.elsewhere.find((one) => one.item === other);
  const { item, itemName: task } = editing;
  const replace = editing.sheet !== null;

  const start = async () => {
    const reply = await change('sheet.start', { item, from, replace });
    if (!reply.ok) return setFault(sayFault(reply.refusal));
    note(tell('job.begun', { task, sheet: chosen?.name ?? '' }), reply.value.undo);
    onBegun(null);
  };
  const copy = async () => {
    const reply = await change('sheet.copy', { item, from: other, replace });
    if (!reply.ok) return setFault(sayFault(reply.refusal));
    note(tell('sheet-edit.copied', { task, car: copied?.carName ?? '' }), reply.value.undo);
    onBegun(reply.value.leftOut);
  };
  return (
    <div className={styles.ways}>
      <div className={styles.way}>
        <NativeSelect label={tell('job.begin-from')} value={from} onChange={(event) => setFrom(event.currentTarget.value)} data={likelyFirst.map((one) => ({ value: one.key, label: one.key === suggested ? tell('job.begin-likely', { sheet: one.name }) : one.name }))} />
        {chosen !== undefined && <p className={styles.soft}>{tell('job.begin-steps', { n: chosen.steps.length })}{chosen.by !== 'anyone' && <strong> {tell(`job.begin-${chosen.by}`)}</strong>}</p>}
        <Button variant={editing.sheet === null ? 'filled' : 'default'} className={styles.start ?? ''} onClick={() => void start()}>{tell('sheet-edit.begin-it')}</Button>
      </div>
      {copied !== undefined && (
        <div className={styles.way}>
          <NativeSelect label={tell('sheet-edit.copy-from')} value={other} onChange={(event) => setOther(event.currentTarget.value)} data={editing.elsewhere.map((one) => ({ value: one.item, label: tell('sheet-edit.copy-is', { car: one.carName, task: one.itemName, n: one.steps }) }))} />
          <p className={styles.soft}>{tell('sheet-edit.copy-what', { car: editing.carName })}{copied.ownTorques > 0 && ` ${tell('sheet-edit.copy-torques', { n: copied.ownTorques, car: copied.carName })}`}</p>
          <Button variant="default" className={styles.start ?? ''} onClick={() => void copy()}>{tell('sheet-edit.copy')}</Button>
        </div>
      )}
      <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault}</p>
    </div>
  );
}
