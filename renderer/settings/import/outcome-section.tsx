import { Button } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Refusal } from '../../../shared-core/result/result.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { broughtTo, broughtWords } from './count-words.ts';
import type { PartProps } from './questions-section.tsx';
import styles from './import.module.css';

interface OutcomeSectionProps extends PartProps {
  readonly asking: boolean;
  readonly again: () => void;
  readonly onTaken: () => void;
}

/** What a table comes to, counted, and the one button that stores it. */
export function OutcomeSection({ draft, view, asking, again, onTaken }: OutcomeSectionProps) {
  const taking = useTaking({ draft, view, again, onTaken });
  const { counts, questions } = view;
  const [what, brought] = [broughtTo(view.cars), broughtWords(counts)];
  const open = questions.length > 0;
  const fault = taking.fault ?? (taking.pressed && open ? tell('import.take-open') : null);
  return (
    <Section id="import-outcome" title={tell('import.outcome')}>
      <div role="status" className={styles.outcome}>
        <p className={styles.figure}>{what === null ? tell(open ? 'import.will-wait' : 'import.will-none') : tell(open ? 'import.will-part' : 'import.will', { what })}</p>
        {counts.waiting > 0 && <p>{tell('import.waiting', { n: counts.waiting })}</p>}
      </div>
      <ul className={styles.plain}>
        {counts.refused > 0 && <li><a href="#import-refused" onClick={goTo('import-refused')}>{tell('import.cannot', { n: counts.refused })}</a></li>}
        {counts.setAside > 0 && <li><a href="#import-set-aside" onClick={goTo('import-set-aside')}>{tell('import.doubtful', { n: counts.setAside })}</a>: {tell('import.doubtful-row')}</li>}
        {counts.duplicates > 0 && <li><a href="#import-duplicate" onClick={goTo('import-duplicate')}>{tell('import.already', { n: counts.duplicates })}</a></li>}
      </ul>
      <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault !== null && <><strong>{tell('import.not-taken')}</strong> {fault}</>}</p>
      {(view.ready || open) && (
        <Button variant={view.ready ? 'filled' : 'default'} onClick={taking.take} aria-disabled={taking.sending || asking}>
          {taking.sending ? tell('import.taking') : taking.known ? tell('import.take-again') : open || brought === null ? tell('import.take-later') : tell('import.take', { what: brought })}
        </Button>
      )}
    </Section>
  );
}

/** A link within the page: the address is the screen's and stays. */
function goTo(id: string) {
  return (event: { preventDefault(): void }) => {
    event.preventDefault();
    const heading = document.getElementById(id);
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  };
}

interface TakingProps extends Pick<PartProps, 'draft' | 'view'> {
  readonly again: () => void;
  readonly onTaken: () => void;
}

/** Stores the table as it is shown; where something was entered since, it is looked at anew and nothing is stored. */
function useTaking({ draft, view, again, onTaken }: TakingProps) {
  const client = useQueryClient();
  const [sending, setSending] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pressed, setPressed] = useState(false);
  // Told once that this very file stands already, the button takes it in beside that.
  const known = refusal?.code === 'import-file-known';
  const take = async () => {
    setPressed(true);
    setRefusal(null);
    if (view.questions.length > 0) return document.getElementById('import-questions')?.focus();
    if (sending || !view.ready) return;
    setSending(true);
    const { base64, text, name } = draft.table;
    const result = await change('import.keep', { ...draft.choices, base64, text, name, digest: view.digest, outcome: view.outcome, again: known });
    // The list of what was taken in stands there already when the table goes.
    if (result.ok) await client.invalidateQueries({ queryKey: ['import.standing'] });
    setSending(false);
    if (!result.ok) {
      setRefusal(result.refusal);
      return again();
    }
    note(tell('import.taken', { what: broughtTo(result.value.cars) ?? '' }), result.value.undo);
    onTaken();
    document.getElementById('import-earlier')?.focus();
  };
  return { sending, pressed, known, fault: refusal === null ? null : sayFault(refusal), take: () => void take() };
}
