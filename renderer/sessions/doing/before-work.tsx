import { useId, useState } from 'react';
import type { Doing } from '../../../shared-core/views/doing-schema.ts';
import { CautionText } from '../../ui/caution-text.tsx';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { tell } from '../../ui/words/tell.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';

/** What can hurt, read before the first step: nothing is ticked before. Once begun, what came since is read by itself. */
export function BeforeWork({ doing }: { readonly doing: Doing }) {
  const id = useId();
  const [fault, setFault] = useState<string | null>(null);
  const begin = async () => {
    const reply = await change('work.begin', { session: doing.session.id, read: doing.unread.map((one) => one.key) });
    if (!reply.ok) setFault(sayFault(reply.refusal));
  };
  const isNew = doing.begunAt !== null;
  const tasks = new Map(doing.tasks.map((task) => [task.key, tell('session.task', { car: task.carName, name: task.name })]));
  return (
    <section className={styles.before} aria-labelledby={id}>
      <h2 id={id}>{tell(isNew ? 'doing.cautions-new' : 'job.cautions')}</h2>
      <ul className={styles.cautions}>
        {(isNew ? doing.unread : doing.cautions).map(({ name, by, said, tasks: of }) => (
          <li key={said.code}>
            <CautionText name={name} by={by} said={said} />
            {of.length > 0 && tasks.size > 1 && <span className={styles.soft}> {tell('job.caution-for', { tasks: of.map((key) => tasks.get(key) ?? key).join('; ') })}</span>}
          </li>
        ))}
      </ul>
      <p>{isNew ? tell('doing.cautions-new-what') : tell('doing.of-all', { steps: tell('doing.steps', { n: doing.steps.length }), tasks: tell('session.tasks', { n: doing.tasks.length }) })}</p>
      {fault !== null && <p role="alert" className={styles.fault}>{fault}</p>}
      <div className={styles.buttons}><BigButton look="main" onPress={() => void begin()}>{tell(isNew ? 'doing.go-on' : 'doing.begin')}</BigButton></div>
    </section>
  );
}
