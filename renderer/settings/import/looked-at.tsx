import { Button } from '@mantine/core';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { Refusal } from '../../../shared-core/result/result.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { tell } from '../../ui/words/tell.ts';
import { ColumnsSection } from './columns-section.tsx';
import { FirstRowsSection } from './first-rows-section.tsx';
import { HowReadSection } from './how-read-section.tsx';
import { LeftRows } from './left-rows.tsx';
import { OutcomeSection } from './outcome-section.tsx';
import { QuestionsSection, type PartProps } from './questions-section.tsx';
import type { TableChoices, TableDraft } from './table-draft.ts';
import { usePreview } from './use-preview.ts';
import { WorkSection } from './work-section.tsx';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';

interface LookedAtProps {
  readonly draft: TableDraft;
  readonly onChoices: (choices: TableChoices) => void;
  readonly onTaken: () => void;
}

/** Refusals that another way of reading the same table may settle. */
const BY_READING = new Set(['import-only-head', 'import-no-values', 'import-too-wide', 'import-quotes', 'import-no-column', 'import-column-twice', 'import-delimiter']);

/** A table as it is understood: what is open first, what comes of it, how it was read, and its rows. */
export function LookedAt({ draft, onChoices, onTaken }: LookedAtProps) {
  const preview = usePreview(draft);
  const { view, refusal, asking } = preview;
  const readable = refusal === null || BY_READING.has(refusal.code);
  useFocusThatGoes(view !== null || refusal !== null, view?.questions);
  const part = view === null || refusal !== null ? null : { draft, view, onChoices };
  return (
    <div className={styles.looked} aria-busy={asking}>
      {view === null && refusal === null && <p role="status" className={sectionStyles.soft}>{tell('import.reading')}</p>}
      {refusal !== null && <Unread refusal={refusal} again={preview.again} />}
      {part !== null && view !== null && view.questions.length > 0 && <QuestionsSection {...part} />}
      <div className={styles.columns}>
        {part !== null && <OutcomeSection {...part} asking={asking} again={preview.again} onTaken={onTaken} />}
        <div className={styles.column}>
          {readable && (view !== null || refusal !== null) && <HowReadSection draft={draft} view={part?.view ?? null} onChoices={onChoices} />}
          {part !== null && <Rows {...part} />}
        </div>
      </div>
    </div>
  );
}

function Rows(part: PartProps) {
  return (
    <>
      <ColumnsSection {...part} />
      {part.view.items.length > 0 && <WorkSection {...part} />}
      <FirstRowsSection view={part.view} />
      {(['refused', 'set-aside', 'duplicate'] as const).map((state) => <LeftRows key={state} view={part.view} state={state} />)}
    </>
  );
}

function Unread({ refusal, again }: { readonly refusal: Refusal; readonly again: () => void }) {
  return (
    <div className={styles.trouble} role="alert">
      <h2 id="import-unread" tabIndex={-1}>{tell('import.unread')}</h2>
      <p>{sayFault(refusal)}</p>
      {refusal.code === 'no-answer' && <Button onClick={again}>{tell('failed.again')}</Button>}
      {refusal.code === 'import-no-car' && <Link href="/car">{tell('import.add-car')}</Link>}
    </div>
  );
}

/** The focus goes to what is said of a new table; and where its place has gone, for its question is answered, to what comes next. */
function useFocusThatGoes(answered: boolean, questions: readonly unknown[] | undefined): void {
  const before = useRef(false);
  useEffect(() => {
    const first = answered && !before.current;
    before.current = answered;
    if (!first && document.activeElement !== document.body) return;
    ['import-unread', 'import-questions', 'import-outcome'].map((id) => document.getElementById(id)).find((one) => one !== null)?.focus({ preventScroll: !first });
  }, [answered, questions]);
}
