import { Button } from '@mantine/core';
import { useState } from 'react';
import { localDate } from '../../shared-core/calendar/local-date.ts';
import type { ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Refusal, Result } from '../../shared-core/result/result.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { runLong } from '../ui/run-long.ts';
import { Section } from '../ui/section.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './handover.module.css';
import { packDraft, packRequest, type PackDraft } from './pack-draft.ts';
import { PackChoices } from './pack-choices.tsx';
import { PackLook } from './pack-look.tsx';
import { useAllCars, type AnyCar } from './use-all-cars.ts';

/** Chooses what goes into a car's pack, shows the very document, and writes it. */
export function WriteLeaf({ car }: { readonly car: string | null }) {
  const cars = useAllCars();
  if (cars === null) return <p role="status">{tell('asking')}</p>;
  const first = cars.find((one) => one.id === car) ?? cars[0];
  return first === undefined ? <p>{tell('handover.no-car')}</p> : <Writing key={first.id} cars={cars} first={first.id} />;
}

/** What was chosen last, so that one comes back to it. */
let lastDraft: PackDraft | null = null;

type Working = 'preview' | 'write' | null;

function Writing({ cars, first }: { readonly cars: readonly AnyCar[]; readonly first: string }) {
  const [draft, setDraft] = useState<PackDraft>(lastDraft !== null && cars.some((one) => one.id === lastDraft?.car) ? lastDraft : packDraft(first));
  const [preview, setPreview] = useState<ReplyOf<'pack.preview'> | null>(null);
  const [written, setWritten] = useState<ReplyOf<'pack.write'> | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [working, setWorking] = useState<Working>(null);
  const offered = useAsk('pack.papers', { car: draft.car, period: periodOf(draft) }, { hold: true });
  const papers = offered.state === 'answered' ? offered.value.papers : [];
  const previous = offered.state === 'answered' ? offered.value.previous : [];
  const set = (change: Partial<PackDraft>) => {
    // Another car has other papers and another photograph.
    lastDraft = { ...draft, ...(change.car === undefined ? {} : { leftOut: [], cover: '', previous: '' as const }), ...change };
    setDraft(lastDraft);
    setPreview(null);
    setWritten(null);
    setRefusal(null);
  };
  async function send<Name extends 'pack.preview' | 'pack.write'>(name: Name, what: NonNullable<Working>, onDone: (reply: ReplyOf<Name>) => void) {
    if (working !== null) return;
    setWorking(what);
    const request = packRequest(draft, papers.map((one) => one.id));
    const result = request.ok ? ((await runLong(name, request.value as RequestOf<Name>)) as Result<ReplyOf<Name>>) : request;
    setWorking(null);
    setRefusal(result.ok ? null : result.refusal);
    if (result.ok) onDone(result.value);
  }
  return (
    <div className={styles.sides}>
      <div className={styles.side}>
        <PackChoices draft={draft} set={set} cars={cars} papers={papers} previous={previous} refusal={refusal} />
      </div>
      <div className={styles.side}>
        <Section title={tell('handover.write-title')} hint={tell('pack.what')}>
          <div className={styles.buttons}>
            <Button variant="default" aria-disabled={working !== null} onClick={() => void send('pack.preview', 'preview', setPreview)}>{tell('handover.look')}</Button>
            <Button aria-disabled={working !== null} onClick={() => void send('pack.write', 'write', setWritten)}>{tell('pack.submit')}</Button>
          </div>
          <p role="status" className={working === null ? 'only-said' : styles.strong}>{working === null ? '' : tell(`handover.working-${working}`)}</p>
          <p role="alert" className={refusal === null ? 'only-said' : styles.fault}>{refusal === null ? '' : sayFault(refusal)}</p>
          <p className={styles.soft}>{tell('pack.out')} {tell('pack.sealed')}</p>
          {written !== null && <Written written={written} />}
        </Section>
        {preview !== null && <PackLook key={preview.preview} preview={preview} />}
      </div>
    </div>
  );
}

function periodOf({ from, to }: PackDraft): RequestOf<'pack.papers'>['period'] {
  const [first, last] = [localDate(from), localDate(to)];
  const [a, b] = [first.ok ? first.value : null, last.ok ? last.value : null];
  return a !== null && b !== null && a > b ? { from: null, to: null } : { from: a, to: b };
}

function Written({ written }: { readonly written: ReplyOf<'pack.write'> }) {
  return (
    <div className={styles.written}>
      <p role="status" className={styles.strong}>{tell('pack.done', { files: written.files })}</p>
      {written.notes.map((note) => <p key={note}>{note}</p>)}
      <dl>
        <dt>{tell('pack.path')}</dt>
        <dd>{written.path}</dd>
        <dt>{tell('pack.seal')}</dt>
        <dd><pre tabIndex={0} aria-label={tell('handover.seal-text')}>{written.seal}</pre></dd>
      </dl>
    </div>
  );
}
