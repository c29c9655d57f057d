import { tell } from '../../ui/words/tell.ts';
import { NotEntered } from './figure-lists.tsx';
import { figureText, measureUnit, measureWords, torqueText, torqueTyped } from './figure-words.ts';
import type { SheetUnit } from './sheet-choices.ts';
import { Blank, Box } from './sheet-part.tsx';
import styles from './sheet.module.css';
import type { Figure, Fluid, JobStep, Torque } from './sheet-types.ts';

/** One step: a box to tick, its number, what can hurt, what to do, and its figures. */
export function StepLine({ step, unit }: { readonly step: JobStep; readonly unit: SheetUnit }) {
  return (
    <li className={styles.step} value={step.number}>
      <Box />
      <span className={styles.number} aria-hidden="true">{step.number}</span>
      <div>
        <p>{step.hazards.length > 0 && <strong className={styles.hazard}>{step.hazards.map((one) => one.name).join(', ')}</strong>} {step.text}</p>
        {step.torques.map((torque) => <TorqueOfStep key={torque.name} torque={torque} unit={unit} />)}
        {step.fluids.map((fluid) => <FluidOfStep key={fluid.name} fluid={fluid} />)}
        {step.figures.map((figure) => <p key={figure.figure} className={styles.figure}>{figure.name}: <Value figure={figure} /></p>)}
        {step.measure !== null && <p className={styles.figure}>{measureWords(step.measure)} <Blank /> {measureUnit(step.measure)}</p>}
        {step.tools.length > 0 && <p className={styles.soft}>{tell('job.step-tools', { tools: step.tools.join(', ') })}</p>}
      </div>
    </li>
  );
}

function TorqueOfStep({ torque, unit }: { readonly torque: Torque; readonly unit: SheetUnit }) {
  const typed = torqueTyped(torque, unit);
  return (
    <p className={styles.figure}>
      {torque.name}: {torque.entered ? <strong className={styles.torque}>{torqueText(torque, unit)}</strong> : <NotEntered unit={tell(`job.unit-${unit}`)} />}
      {typed !== null && ` (${tell('job.as-entered', { text: typed })})`}
      {torque.question !== null && <strong className={styles.question}> · {tell('job.compare')}</strong>}
    </p>
  );
}

function FluidOfStep({ fluid: { name, quantity, specification } }: { readonly fluid: Fluid }) {
  if (quantity === null && specification === null) return <p className={styles.figure}>{name}</p>;
  return (
    <p className={styles.figure}>
      {name}: {quantity !== null && <Value figure={quantity} />}{quantity !== null && specification !== null && ', '}{specification !== null && <Value figure={specification} />}
    </p>
  );
}

function Value({ figure }: { readonly figure: Figure }) {
  return figure.entered ? <strong>{figureText(figure)}</strong> : <NotEntered unit="" />;
}
