import type { ReactNode } from 'react';
import { tell } from '../../ui/words/tell.ts';
import { figureText, sourceWords, torqueText, torqueTyped } from './figure-words.ts';
import type { SheetUnit } from './sheet-choices.ts';
import { Blank } from './sheet-part.tsx';
import styles from './sheet.module.css';
import type { Figure, Fluid, Torque } from './sheet-types.ts';

/** Every torque of the work once, with its source. */
export function TorqueList({ torques, unit }: { readonly torques: readonly Torque[]; readonly unit: SheetUnit }) {
  return (
    <dl className={styles.figures}>
      {torques.map((torque) => {
        const typed = torqueTyped(torque, unit);
        const thread = torque.on?.thread ?? null;
        return (
          <Line key={`${torque.figure ?? ''} ${torque.name} ${torque.text}`} name={thread === null ? torque.name : `${torque.name}, ${thread}`}>
            {torque.entered
              ? <><strong>{torqueText(torque, unit)}</strong>{typed !== null && ` (${tell('job.as-entered', { text: typed })})`}<span className={styles.soft}> · {sourceWords(torque)}</span>{torque.question !== null && <p className={styles.question}>{torque.question.text}</p>}</>
              : <NotEntered unit={tell(`job.unit-${unit}`)} />}
          </Line>
        );
      })}
    </dl>
  );
}

/** Every fluid of the work once: what it must meet, and how much. */
export function FluidList({ fluids }: { readonly fluids: readonly Fluid[] }) {
  return (
    <dl className={styles.figures}>
      {fluids.map(({ name, specification, quantity }) => (
        <Line key={`${name} ${specification?.figure ?? ''} ${quantity?.figure ?? ''}`} name={name}>
          {quantity !== null && <div><FigureValue figure={quantity} /></div>}
          {specification !== null && <div><FigureValue figure={specification} /></div>}
        </Line>
      ))}
    </dl>
  );
}

/** Every other figure of the work once, with its source. */
export function FigureList({ figures }: { readonly figures: readonly Figure[] }) {
  return <dl className={styles.figures}>{figures.map((figure) => <Line key={figure.figure} name={figure.name}><FigureValue figure={figure} /></Line>)}</dl>;
}

function FigureValue({ figure }: { readonly figure: Figure }) {
  return figure.entered ? <><strong>{figureText(figure)}</strong><span className={styles.soft}> · {sourceWords(figure)}</span></> : <NotEntered unit="" />;
}

/** A line to write on, for what nobody has entered: never a figure of our own. */
export function NotEntered({ unit }: { readonly unit: string }) {
  return <span><Blank /> {unit}<span className={styles.soft}>{unit !== '' && ' · '}{tell('job.not-entered')}</span></span>;
}

function Line({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return <div><dt>{name}</dt><dd>{children}</dd></div>;
}
