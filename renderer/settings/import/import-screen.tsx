import { useState } from 'react';
import { Link } from 'wouter';
import { dropDraft, draftLeft, leaveDraft } from '../../ui/form/drafts.ts';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { ChooseSection } from './choose-section.tsx';
import { EarlierSection } from './earlier-section.tsx';
import { LookedAt } from './looked-at.tsx';
import { startChoices, type ChosenTable, type TableChoices, type TableDraft } from './table-draft.ts';
import { useDrop } from './use-drop.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';

/** Takes in a table of readings or work: chosen, looked at row by row, then stored as one whole; and those taken in before. `car` is the car whose file one came from. */
export function ImportScreen({ car }: { readonly car: string | null }) {
  const yard = useAsk('yard.show', {});
  const key = `import ${car ?? ''}`;
  const [draft, setDraft] = useState<TableDraft | null>(() => draftLeft<TableDraft>(key));
  const name = yard.state === 'answered' ? (yard.value.lanes.find(({ id }) => id === car)?.name ?? null) : null;
  const keep = (next: TableDraft | null) => {
    setDraft(next);
    if (next === null) dropDraft(key);
    else leaveDraft(key, next);
  };
  const onTable = (table: ChosenTable) => keep({ table, choices: startChoices(car) });
  const drop = useDrop(onTable);
  return (
    <div className={styles.screen} {...drop.place} data-over={drop.over}>
      <div className={styles.top}>
        <Link href={car === null ? '/settings' : `/car/${car}`}>{car === null ? tell('import.back') : tell('import.back-car', { car: name ?? car })}</Link>
        <ScreenTitle>{tell('import.title')}</ScreenTitle>
        <p className={sectionStyles.soft}>{tell('import.lead')}{name !== null && ` ${tell('import.lead-car', { car: name })}`}</p>
      </div>
      <ChooseSection table={draft?.table ?? null} drop={drop} onPutAway={() => keep(null)} />
      {draft !== null && <LookedAt key={draft.table.key} draft={draft} onChoices={(choices: TableChoices) => keep({ ...draft, choices })} onTaken={() => keep(null)} />}
      <EarlierSection />
    </div>
  );
}
