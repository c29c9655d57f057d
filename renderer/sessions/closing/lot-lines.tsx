import { TextInput } from '@mantine/core';
import type { ClosingCar } from '../../../shared-core/views/closing-schema.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './closing.module.css';

interface LotLinesProps {
  readonly car: ClosingCar;
  readonly lots: readonly string[];
  readonly at: string;
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly onChange: (lots: readonly string[]) => void;
}

/** What was taken off the shelf, and what the shelf did not have. */
export function LotLines({ car, lots, at, place, group, onChange }: LotLinesProps) {
  if (car.lots.length === 0 && car.lacks.length === 0) return null;
  return (
    <FieldGroup legend={tell('closing.shelf')} place={group}>
      {car.lots.map((one, index) => (
        <div key={`${one.lot} ${one.for}`} className={styles.lot}>
          <TextInput {...place(`${at}lots.${index}`)} label={tell('closing.lot', { part: one.partName, unit: one.unit })} description={[tell('closing.lot-for', { task: one.for }), one.where].filter((text) => text !== null).join(' · ')} value={lots[index] ?? ''} inputMode="decimal" autoComplete="off" onChange={(event) => onChange(lots.map((own, i) => (i === index ? event.currentTarget.value : own)))} />
        </div>
      ))}
      {car.lacks.map((lack) => <p key={lack.text} className={styles.soft}>{lack.text}</p>)}
    </FieldGroup>
  );
}
