import { useState } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import type { OpenSheet } from '../car-sheet.ts';
import { SetForm } from '../start/set-form.tsx';
import { AdviceSection } from './advice-section.tsx';
import type { Intake } from './answers.ts';
import { MissingSection } from './missing-section.tsx';
import { QuestionsSection } from './questions-section.tsx';
import styles from '../car.module.css';

interface IntakeLeafProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** What is known of a car that others kept before, and what to do first. */
export function IntakeLeaf({ view, open }: IntakeLeafProps) {
  const [setting, setSetting] = useState(false);
  const answer = useAsk('intake.show', { car: view.car.id });
  return (
    <>
      <Asked answer={answer}>
        {(intake) => (
          <div className={styles.columns}>
            <div className={styles.column}>
              <MissingSection missing={intake.first} open={open} onSet={() => setSetting(true)} />
              <QuestionsSection view={view} intake={intake} />
            </div>
            <Advice intake={intake} open={open} />
          </div>
        )}
      </Asked>
      <SideSheet title={tell('set.title', { car: view.car.name })} opened={setting} onClose={() => setSetting(false)}>
        <SetForm view={view} onClose={() => setSetting(false)} />
      </SideSheet>
    </>
  );
}

function Advice({ intake: { now, look, wait, minutes, counts }, open }: { readonly intake: Intake; readonly open: OpenSheet }) {
  if (counts.items === 0) return null;
  return (
    <div className={styles.column}>
      <AdviceSection when="now" items={now} minutes={minutes.now} open={open} />
      <AdviceSection when="look" items={look} minutes={minutes.look} open={open} />
      <AdviceSection when="wait" items={wait} minutes={null} open={open} />
    </div>
  );
}
