import { Button } from '@mantine/core';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { SideSheet } from '../ui/side-sheet.tsx';
import { tell } from '../ui/words/tell.ts';
import { NewCarForm } from './forms/new-car-form.tsx';
import styles from './car.module.css';

interface CarChoiceProps {
  readonly cars: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: string;
}

/** The household's cars by name, and a way to add one. */
export function CarChoice({ cars, chosen }: CarChoiceProps) {
  const [adding, setAdding] = useState(false);
  const [, go] = useLocation();
  return (
    <div className={styles.choice}>
      <nav aria-label={tell('cars.list')}>
        <ul>
          {cars.map(({ id, name }) => (
            <li key={id}><Link href={`/car/${id}`} aria-current={id === chosen ? 'page' : undefined}>{name}</Link></li>
          ))}
        </ul>
      </nav>
      <Button variant="default" size="compact-md" onClick={() => setAdding(true)}>{tell('cars.add')}</Button>
      <SideSheet title={tell('cars.add')} opened={adding} onClose={() => setAdding(false)}>
        <NewCarForm
          onDone={(id) => {
            setAdding(false);
            go(`/car/${id}`);
          }}
          onCancel={() => setAdding(false)}
        />
      </SideSheet>
    </div>
  );
}
