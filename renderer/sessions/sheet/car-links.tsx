import type { CarJob } from '../../../shared-core/views/job-sheet-view-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './sheet.module.css';

/** The heading of a car's sheet, to be gone to. */
export function carHeading(car: string): string {
  return `job-car-${car}`;
}

/** The cars of the session, each leading to its own sheet further down. */
export function CarLinks({ cars }: { readonly cars: readonly CarJob[] }) {
  return (
    <ul className={styles.links} aria-label={tell('job.cars')}>
      {cars.map(({ car, carName }) => (
        <li key={car}>
          <a
            href={`#${carHeading(car)}`}
            onClick={(event) => {
              event.preventDefault();
              const heading = document.getElementById(carHeading(car));
              heading?.scrollIntoView();
              heading?.focus({ preventScroll: true });
            }}
          >
            {carName}
          </a>
        </li>
      ))}
    </ul>
  );
}
