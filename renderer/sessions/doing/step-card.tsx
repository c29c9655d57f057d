import { useId, type ReactNode, type RefObject } from 'react';
import type { Doing, DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { CautionText } from '../../ui/caution-text.tsx';
import { tell } from '../../ui/words/tell.ts';
import { figureText, torqueText, torqueTyped } from '../sheet/figure-words.ts';
import { useSheetUnit, type SheetUnit } from '../sheet/sheet-choices.ts';
import styles from './doing.module.css';
import { MeasureField } from './measure-field.tsx';
import { TorqueField } from './torque-field.tsx';

interface StepCardProps {
  readonly doing: Doing;
  readonly step: DoingStep;
  readonly cardRef: RefObject<HTMLElement | null>;
  /** Around what must be read before it is ticked. */
  readonly wordsRef: RefObject<HTMLDivElement | null>;
  readonly children: ReactNode;
}

/** One thing to do, in type to be read from the floor: what can hurt first, then what to do, then its figures and what is read at it. */
export function StepCard({ doing, step, cardRef, wordsRef, children }: StepCardProps) {
  const id = useId();
  const [unit] = useSheetUnit();
  const session = doing.session.id;
  return (
    <section ref={cardRef} className={styles.card} tabIndex={-1} aria-labelledby={`${id}-place ${id}-text`} data-ticked={step.tick !== null}>
      <div ref={wordsRef} className={styles.words}>
        <p id={`${id}-place`} className={styles.place}>{tell('doing.place', { n: step.place, of: doing.steps.length, car: step.carName, block: step.block })}</p>
        {step.cautions.length > 0 && (
          <ul className={styles.cautions}>
            {step.cautions.map(({ name, by, said }) => <li key={said.code}><CautionText name={name} by={by} said={said} /></li>)}
          </ul>
        )}
        <h2 id={`${id}-text`} className={styles.text}>{step.text}</h2>
        {step.tick !== null && <p className={styles.ticked}>{step.tick.as === 'done' ? tell('doing.ticked') : tell('doing.left-out', { why: step.tick.note })}</p>}
        <Figures step={step} unit={unit} />
      </div>
      {step.torques.map((torque) => <TorqueField key={torque.name} session={session} step={step} torque={torque} unit={unit} />)}
      {step.measure !== null && <MeasureField session={session} step={step} measure={step.measure} />}
      {children}
    </section>
  );
}

function Figures({ step, unit }: { readonly step: DoingStep; readonly unit: SheetUnit }) {
  const lines = [
    ...step.torques.map((torque) => ({ name: torque.name, text: torqueText(torque, unit), more: [torqueTyped(torque, unit) === null ? null : tell('job.as-entered', { text: torqueTyped(torque, unit) ?? '' }), torque.source, torque.question === null ? null : tell('job.compare')] })),
    ...step.fluids.flatMap(({ name, quantity, specification }) => [quantity, specification].flatMap((figure) => (figure === null ? [] : [{ name, text: figure.entered ? figureText(figure) : null, more: [figure.source] }]))),
    ...step.figures.map((figure) => ({ name: figure.name, text: figure.entered ? figureText(figure) : null, more: [figure.source] })),
  ];
  return (
    <>
      {lines.length > 0 && (
        <dl className={styles.figures}>
          {lines.map(({ name, text, more }, at) => (
            <div key={`${at} ${name}`}>
              <dt>{name}</dt>
              <dd>{text === null ? <span className={styles.soft}>{tell('job.not-entered')}</span> : <strong>{text}</strong>} <span className={styles.soft}>{more.filter((one) => one !== null).join(' · ')}</span></dd>
            </div>
          ))}
        </dl>
      )}
      {step.tools.length > 0 && <p className={styles.soft}>{tell('job.step-tools', { tools: step.tools.join(', ') })}</p>}
    </>
  );
}
