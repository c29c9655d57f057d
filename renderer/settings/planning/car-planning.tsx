import { Button } from '@mantine/core';
import { useId, type ReactNode } from 'react';
import type { PlanningCar } from '../../../shared-core/views/planning-view.ts';
import { minutesWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { daysWords } from './days-words.ts';
import styles from './planning.module.css';
import type { OpenPlanningSheet } from './planning-sheet.ts';
import { takeAway } from './take-away.ts';

interface CarPlanningProps {
  readonly car: PlanningCar;
  readonly open: OpenPlanningSheet;
}

/** Of one car: the days without it, what is opened up once for several items, and what is worth doing while it is there. */
export function CarPlanning({ car, open }: CarPlanningProps) {
  const words = useWords();
  const named = { car: car.name };
  return (
    <Section title={car.name}>
      <Part title={tell('car-days.title')} none={tell('car-days.none')} add={{ text: tell('car-days.add'), label: tell('car-days.add-of', named), onAdd: () => open({ kind: 'car-days', car: car.id, days: null }) }}>
        {car.days.map((days) => {
          const plain = tell(`car-days.${days.why}`, { days: daysWords(days, words) });
          const what = days.note === '' ? plain : tell('car-days.with-note', { what: plain, note: days.note });
          return (
            <Row key={days.id} text={what} remove={tell('car-days.remove-of', { ...named, what })} onRemove={() => void takeAway('car-days.remove', days.id, tell('car-days.removed'))}>
              <Button size="compact-sm" variant="default" aria-label={tell('car-days.change-of', { ...named, what })} onClick={() => open({ kind: 'car-days', car: car.id, days: days.id })}>{tell('places.change')}</Button>
            </Row>
          );
        })}
      </Part>
      <Part title={tell('access.title')} none={tell('access.none')} add={{ text: tell('access.add'), label: tell('access.add-of', named), onAdd: () => open({ kind: 'access', car: car.id, access: null }) }} hint={car.accessUnstated.length === 0 ? null : tell('access.unstated', { names: car.accessUnstated.join(', ') })}>
        {car.access.map((one) => (
          <Row key={one.id} text={tell('access.row', { name: one.name, time: minutesWords(one.minutes) })} small={one.items.length === 0 ? tell('access.no-items') : tell('access.items', { items: one.items.join(', ') })} remove={tell('access.remove-of', { ...named, name: one.name })} onRemove={() => void takeAway('access.remove', one.id, tell('access.removed', { name: one.name }))}>
            <Button size="compact-sm" variant="default" aria-label={tell('access.change-of', { ...named, name: one.name })} onClick={() => open({ kind: 'access', car: car.id, access: one.id })}>{tell('places.change')}</Button>
          </Row>
        ))}
      </Part>
      <Part title={tell('pairs.title')} none={tell('pairs.none')} add={{ text: tell('pairs.add'), label: tell('pairs.add-of', named), onAdd: () => open({ kind: 'pair', car: car.id }) }}>
        {car.pairs.map((pair) => {
          const what = tell('pairs.row', { also: pair.alsoName, when: pair.whenName });
          return <Row key={pair.id} text={what} small={pair.savesMinor === null ? tell('pairs.saves-opening') : tell('pairs.saves', { amount: words.money(pair.savesMinor) })} remove={tell('pairs.remove-of', { what })} onRemove={() => void takeAway('worth-while.remove', pair.id, tell('pairs.removed'))} />;
        })}
      </Part>
    </Section>
  );
}

interface PartProps {
  readonly title: string;
  readonly none: string;
  readonly add: { readonly text: string; readonly label: string; readonly onAdd: () => void };
  readonly hint?: string | null;
  readonly children: readonly ReactNode[];
}

function Part({ title, none, add, hint = null, children }: PartProps) {
  const id = useId();
  return (
    <div className={styles.part}>
      <div className={styles.head}>
        <h3 id={id}>{title}</h3>
        <Button size="compact-sm" variant="default" aria-label={add.label} onClick={add.onAdd}>{add.text}</Button>
      </div>
      {children.length === 0 ? <p className={styles.soft}>{none}</p> : <ul className={styles.inner} aria-labelledby={id}>{children}</ul>}
      {hint !== null && <p className={styles.soft}>{hint}</p>}
    </div>
  );
}

interface RowProps {
  readonly text: string;
  readonly small?: string;
  readonly remove: string;
  readonly onRemove: () => void;
  readonly children?: ReactNode;
}

function Row({ text, small, remove, onRemove, children }: RowProps) {
  return (
    <li className={styles.head}>
      <span>{text}{small !== undefined && <span className={styles.small}> {small}</span>}</span>
      <span className={styles.buttons}>
        {children}
        <Button size="compact-sm" variant="subtle" aria-label={remove} onClick={onRemove}>{tell('places.remove')}</Button>
      </span>
    </li>
  );
}
