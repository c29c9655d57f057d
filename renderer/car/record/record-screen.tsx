import { Button } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { useWords } from '../../ui/household.tsx';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { AmendForm } from './amend-form.tsx';
import { RecordBeside } from './record-beside.tsx';
import { RecordElements } from './record-elements.tsx';
import { RecordVersions } from './record-versions.tsx';
import { RecordWhole } from './record-whole.tsx';
import styles from './record.module.css';
import { TakeBackForm } from './take-back-form.tsx';

/** One work record: what it says, what it holds of a full entry, what hangs on it, and every way in which it was written. */
export function RecordScreen({ car, record }: { readonly car: string; readonly record: string }) {
  const words = useWords();
  const answer = useAsk('record.show', { record }, { hold: true });
  const whole = useAsk('car.show', { car }, { hold: true });
  const back = <Link href={`/car/${car}`}>{tell('record.back', { car: answer.state === 'answered' ? answer.value.car.name : tell('car.title') })}</Link>;
  return (
    <div className={styles.screen}>
      <div className={styles.top}>
        <p>{back}</p>
        <ScreenTitle>{answer.state === 'answered' ? tell('record.title-of', { date: words.date(answer.value.record.date), title: answer.value.record.title }) : tell('record.title')}</ScreenTitle>
      </div>
      <Asked answer={answer} onward={back}>{(view) => <Record view={view} car={whole.state === 'answered' ? whole.value : null} />}</Asked>
    </div>
  );
}

type Sheet = 'amend' | 'take-back';

function Record({ view, car }: { readonly view: RecordView; readonly car: CarView | null }) {
  const words = useWords();
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const close = () => setSheet(null);
  const { held, earlier } = view;
  return (
    <>
      <div className={styles.buttons}>
        {earlier !== null && <p className={styles.soft}>{tell('earlier.kept')}</p>}
        {earlier === null && <Button size="compact-md" aria-disabled={car === null} onClick={() => car !== null && setSheet('amend')}>{tell('record.amend')}</Button>}
        {earlier === null && held === null && <Button size="compact-md" variant="default" onClick={() => setSheet('take-back')}>{tell('record.take-back')}</Button>}
        {earlier === null && held !== null && <p className={styles.soft}>{held.by === 'seal' || held.on === null ? tell('record.held-seal') : tell('record.held-entry', { date: words.date(held.on) })}</p>}
      </div>
      <div className={styles.columns}>
        <div className={styles.main}>
          <RecordWhole view={view} />
          <RecordVersions view={view} />
        </div>
        <div className={styles.beside}>
          <RecordElements view={view} />
          <RecordBeside view={view} />
        </div>
      </div>
      <SideSheet title={tell(sheet === 'take-back' ? 'record.take-back' : 'record.amend')} opened={sheet !== null} onClose={close}>
        {sheet === 'amend' && car !== null && <AmendForm view={view} car={car} onClose={close} />}
        {sheet === 'take-back' && <TakeBackForm view={view} onClose={close} />}
      </SideSheet>
    </>
  );
}
