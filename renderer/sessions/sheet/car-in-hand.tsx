import { Link } from 'wouter';
import { tell } from '../../ui/words/tell.ts';
import { FigureList, FluidList, TorqueList } from './figure-lists.tsx';
import { fluidsInHand, type CarPart } from './of-car.ts';
import { PartLine } from './part-line.tsx';
import type { SheetUnit } from './sheet-choices.ts';
import { Box, Group, Part } from './sheet-part.tsx';
import styles from './sheet.module.css';
import { ToolLine } from './tool-line.tsx';

/** Tools, parts, fluids and figures, before anything is opened; and what the data card lacks. */
export function CarInHand({ part, unit }: { readonly part: CarPart; readonly unit: SheetUnit }) {
  const { job, tools, parts, partsFrom } = part;
  const fluids = fluidsInHand(job.fluids);
  const nothing = tools.length + parts.length + fluids.length + job.torques.length + job.figures.length + job.lacks.length === 0 && partsFrom === 'home';
  if (nothing) return null;
  return (
    <Part title={tell('job.in-hand')}>
      {tools.length > 0 && <Group title={tell('job.tools')}><ul className={styles.columns}>{tools.map((tool) => <li key={tool.name} className={styles.ticked}><Box /><ToolLine tool={tool} /></li>)}</ul></Group>}
      {partsFrom === 'garage' && <p>{tell('job.parts-garage')}</p>}
      {parts.length > 0 && <Group title={tell('job.parts')}><ul className={styles.plain}>{parts.map((one) => <li key={`${one.task} ${one.specification}`} className={styles.ticked}><Box /><PartLine part={one} /></li>)}</ul></Group>}
      {fluids.length > 0 && <Group title={tell('job.fluids')}><FluidList fluids={fluids} /></Group>}
      {job.torques.length > 0 && <Group title={tell('job.torques')}><TorqueList torques={job.torques} unit={unit} /></Group>}
      {job.figures.length > 0 && <Group title={tell('job.figures')}><FigureList figures={job.figures} /></Group>}
      {job.lacks.length > 0 && <Lacks part={part} />}
    </Part>
  );
}

/** On the screen alone, with the way to enter it: on paper each stands blank in its place. */
function Lacks({ part: { job } }: { readonly part: CarPart }) {
  return (
    <div className={styles.screenOnly}><Group title={tell('job.lacks')}>
      <p className={styles.soft}>{tell('job.lacks-what')}</p>
      <ul className={styles.plain}>
        {job.lacks.map(({ figure, name, said }) => (
          <li key={figure}>{name}{said.values['why'] ? <span className={styles.soft}>: {String(said.values['why']).trim()}</span> : ''} <Link href={`/car/${job.car}/card`} aria-label={tell('job.enter-of', { figure: name })}>{tell('job.enter')}</Link></li>
        ))}
      </ul>
    </Group></div>
  );
}
