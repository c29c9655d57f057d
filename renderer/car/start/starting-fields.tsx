import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { HistoryChoice, SetChoice } from './set-choice.tsx';
import { chosenSet, itemsOf, type SetDraft } from './set-draft.ts';
import { SetLines } from './set-lines.tsx';
import styles from './start.module.css';
import type { StartingSets } from './use-starting-sets.ts';

interface StartingFieldsProps {
  readonly sets: StartingSets | null;
  readonly draft: SetDraft;
  readonly unit: 'km' | 'mi';
  readonly place: (path: string) => FieldPlace;
  readonly onChange: (change: Partial<SetDraft>) => void;
}

/** What a new car's schedule starts from: the set of its kind, ready to be taken as it is. */
export function StartingFields({ sets, draft, unit, place, onChange }: StartingFieldsProps) {
  if (sets === null) return <p role="status">{tell('set.asking')}</p>;
  const chosen = chosenSet(draft, sets);
  const items = itemsOf(chosen.set, sets);
  const source = sets.sets.find((one) => one.key === chosen.set)?.source;
  return (
    <FieldGroup legend={tell('set.begin')} {...(source === undefined ? {} : { hint: tell('set.marked', { source }) })}>
      <FieldRow>
        <SetChoice sets={sets} chosen={chosen} place={place} mayBeNone onChange={onChange} />
        {chosen.set !== null && <HistoryChoice chosen={chosen} place={place} onChange={onChange} />}
      </FieldRow>
      {chosen.set !== null && (
        <details className={styles.which}>
          <summary>{tell('set.which', { n: items.length - chosen.omit.length, all: items.length })}</summary>
          <SetLines items={items} unit={unit} omit={chosen.omit} onOmit={(omit) => onChange({ omit })} />
        </details>
      )}
    </FieldGroup>
  );
}
