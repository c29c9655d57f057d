import { Button } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { call } from '../bridge/call.ts';
import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { OpenSample } from '../ui/open-sample.tsx';
import { saveText } from '../ui/save-text.ts';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

interface DataSectionProps {
  readonly folder: string;
  readonly sample: boolean;
}

/** Where the household lies, and whether all is well with it. */
export function DataSection({ folder, sample }: DataSectionProps) {
  const examine = useTask(() => change('household.examine', {}));
  const copy = useTask(() => change('backup.make', {}));
  const calendar = useTask(saveCalendar);
  return (
    <Section title={tell('settings.data')}>
      <p className={styles.soft}>{tell('settings.folder', { folder })}</p>
      <div className={styles.task}>
        <p>{tell('import.open-what')}</p>
        <Button component={Link} href="/import" variant="default">{tell('import.open')}</Button>
      </div>
      <div className={styles.task}>
        <p>{tell('settings.calendar-what')}</p>
        <Button variant="default" onClick={calendar.run} aria-disabled={calendar.running}>{tell('settings.calendar')}</Button>
        <div role="status">{calendar.result !== null && (calendar.result.ok ? <p className={styles.soft}>{tell('settings.calendar-saved', { n: calendar.result.value.events, name: calendar.result.value.name })}</p> : <Fault result={calendar.result} />)}</div>
      </div>
      <div className={styles.task}>
        <p>{tell('settings.examine-what')}</p>
        <Button variant="default" onClick={examine.run} aria-disabled={examine.running}>{examine.running ? tell('settings.examining') : tell('settings.examine')}</Button>
        <div role="status">{examine.result !== null && <Examined result={examine.result} />}</div>
      </div>
      <div className={styles.task}>
        <p>{tell('settings.backup-what')}</p>
        <Button variant="default" onClick={copy.run} aria-disabled={copy.running}>{copy.running ? tell('settings.backing-up') : tell('settings.backup')}</Button>
        <div role="status">{copy.result !== null && (copy.result.ok ? <p className={styles.soft}>{tell('settings.backed-up', { n: copy.result.value.entries, folder: copy.result.value.folder })}</p> : <Fault result={copy.result} />)}</div>
      </div>
      {!sample && (
        <div className={styles.task}>
          <p>{tell('settings.sample-what')}</p>
          <OpenSample variant="default" />
        </div>
      )}
    </Section>
  );
}

/** A calendar file of what is due and booked, offered to be saved. */
async function saveCalendar(): Promise<Result<ReplyOf<'calendar.write'>>> {
  const reply = await call('calendar.write', {}) as Result<ReplyOf<'calendar.write'>>;
  if (reply.ok) saveText(reply.value.name, reply.value.text, 'text/calendar');
  return reply;
}

/** Runs something that takes nothing and may take a while. */
function useTask<Reply>(task: () => Promise<Result<Reply>>) {
  const [running, setRunning] = useState(false);
  const [result, setResult] = useState<Result<Reply> | null>(null);
  const run = async () => {
    if (running) return;
    setRunning(true);
    setResult(await task());
    setRunning(false);
  };
  return { running, result, run: () => void run() };
}

function Examined({ result }: { readonly result: Result<ReplyOf<'household.examine'>> }) {
  if (!result.ok) return <Fault result={result} />;
  const { entries, papers, faults } = result.value;
  if (faults.length === 0) return <p className={styles.soft}>{tell('settings.clean', { n: entries, papers })}</p>;
  return (
    <>
      <p className={styles.fault}>{tell('settings.faults', { n: faults.length })}</p>
      <ul>{faults.map((fault) => <li key={`${fault.where} ${fault.what}`}>{tell('settings.fault', fault)}</li>)}</ul>
    </>
  );
}

function Fault({ result }: { readonly result: Result<unknown> }) {
  return result.ok ? null : <p className={styles.fault}>{sayFault(result.refusal)}</p>;
}
