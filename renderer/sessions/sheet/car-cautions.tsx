import { CautionText } from '../../ui/caution-text.tsx';
import { tell } from '../../ui/words/tell.ts';
import { taskNames, type CarPart } from './of-car.ts';
import { Part } from './sheet-part.tsx';
import styles from './sheet.module.css';

/** What can hurt, the gravest first: read before the first step. */
export function CarCautions({ part: { job, cautions, openTasks } }: { readonly part: CarPart }) {
  return (
    <Part title={tell('job.cautions')} look="cautions">
      <ul className={styles.cautions}>
        {cautions.map(({ name, by, said, tasks }) => (
          <li key={said.code}>
            <CautionText name={name} by={by} said={said} />
            {tasks.length > 0 && openTasks.length > 1 && <span className={styles.soft}> {tell('job.caution-for', { tasks: taskNames(job, tasks) })}</span>}
          </li>
        ))}
      </ul>
    </Part>
  );
}
