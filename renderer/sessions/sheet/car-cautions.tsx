import { tell } from '../../ui/words/tell.ts';
import { hazardName, taskNames, type CarPart } from './of-car.ts';
import { Part } from './sheet-part.tsx';
import styles from './sheet.module.css';

/** What can hurt, the gravest first: read before the first step. */
export function CarCautions({ part: { job, cautions, openTasks } }: { readonly part: CarPart }) {
  return (
    <Part title={tell('job.cautions')} look="cautions">
      <ul className={styles.cautions}>
        {cautions.map(({ hazard, by, said, tasks }) => {
          const name = hazard === null ? null : hazardName(job, hazard);
          return (
            <li key={said.code}>
              {(name !== null || by !== 'anyone') && <strong>{[name, by === 'anyone' ? null : tell(`job.by-${by}`)].filter((one) => one !== null).join(', ')}: </strong>}
              {said.text}
              {tasks.length > 0 && openTasks.length > 1 && <span className={styles.soft}> {tell('job.caution-for', { tasks: taskNames(job, tasks) })}</span>}
            </li>
          );
        })}
      </ul>
    </Part>
  );
}
