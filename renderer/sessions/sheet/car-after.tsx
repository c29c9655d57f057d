import { tell } from '../../ui/words/tell.ts';
import type { CarPart } from './of-car.ts';
import { Blank, Box, Group, Part } from './sheet-part.tsx';
import styles from './sheet.module.css';

/** What comes when the steps are done: a last look, the reminder, what is left over, what to look at again, and lines for the record. */
export function CarAfter({ part: { openTasks, disposal } }: { readonly part: CarPart }) {
  const of = (task: string, text: string) => (openTasks.length > 1 ? tell('job.check-of', { task, text }) : text);
  const checks = openTasks.flatMap((task) => task.checks.map((text) => of(task.name, text)));
  const resets = openTasks.flatMap((task) => (task.reset === null ? [] : [of(task.name, task.reset)]));
  const again = openTasks.flatMap((task) => task.followUps.map(({ text, when }) => of(task.name, tell('job.follow-up', { text, when: when.text }))));
  return (
    <Part title={tell('job.after')}>
      <Ticked title={tell('job.checks')} lines={checks} />
      <Ticked title={tell('job.reset')} lines={resets} />
      <Ticked title={tell('job.disposal')} lines={disposal.map((one) => one.said.text)} />
      <Ticked title={tell('job.follow-ups')} lines={again} />
      <p className={styles.written}>
        {([tell('job.written-date'), tell('job.written-odometer'), tell('job.written-minutes')]).map((name) => <span key={name}>{name} <Blank /></span>)}
        <span className={styles.seen}>{tell('job.written-seen')} <Blank /></span>
      </p>
    </Part>
  );
}

function Ticked({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return <Group title={title}><ul className={styles.plain}>{lines.map((line, at) => <li key={at} className={styles.ticked}><Box /><span>{line}</span></li>)}</ul></Group>;
}
