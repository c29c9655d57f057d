import { useLocation } from 'wouter';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { tell } from '../ui/words/tell.ts';
import { NewCarForm } from './forms/new-car-form.tsx';
import styles from './car.module.css';

/** A household without cars: the form for the first one stands here at once. */
export function NoCar() {
  const [, go] = useLocation();
  return (
    <section className={styles.none}>
      <ScreenTitle>{tell('cars.none-title')}</ScreenTitle>
      <p>{tell('cars.none')}</p>
      <NewCarForm onDone={(id) => go(`/car/${id}`)} />
    </section>
  );
}
