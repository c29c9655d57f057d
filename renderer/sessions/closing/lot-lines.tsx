import { TextInput } from '@mantine/core';
import type { ClosingCar } from '../../../shared-core/views/closing-schema.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { lotKey } from './closing-changes.ts';
import styles from './closing.module.css';

interface LotLinesProps {
  readonly taken: Pick<ClosingCar, 'lots' | 'lacks'>;
  /** What the keeper changed of it, by task and lot. */
  readonly told: Readonly<Record<string, string>>;
  readonly at: string;
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly onChange: (lots: Readonly<Record<string, string>>) => void;
}

/** What was taken off the shelf, and what the shelf did not have. */
export function LotLines({ taken: { lots, lacks }, told, at, place, group, onChange }: LotLinesProps) {
  if (lots.length === 0 && lacks.length === 0) return null;
  return (
    <FieldGroup legend={tell('closing.shelf')} place={group}>
      {lots.map((one, index) => (
        <div key={lotKey(one)} className={styles.lot}>
          <TextInput {...place(`${at}lots.${index}`)} label={tell('closing.lot', { part: one.partName, unit: one.unit })} description={[tell('closing.lot-for', { task: one.for }), one.where].filter((text) => text !== null).join(' · ')} value={told[lotKey(one)] ?? String(one.quantity)} inputMode="decimal" autoComplete="off" onChange={(event) => onChange({ [lotKey(one)]: event.currentTarget.value })} />
        </div>
      ))}
      {lacks.map((lack) => <p key={`${lack.task} ${lack.text}`} className={styles.soft}>{lack.text}</p>)}
    </FieldGroup>
  );
}
