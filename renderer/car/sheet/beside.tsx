import { Link } from 'wouter';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './editor.module.css';

/** What stands before the first step, and what is still wanting, as the sheet was saved last. */
export function Beside({ shown, dirty }: { readonly shown: ReplyOf<'sheet.show'>; readonly dirty: boolean }) {
  const { cautions, job, tools, car } = shown;
  const names = new Map([...job.tasks, ...job.blocks.flatMap((block): readonly { readonly hazards: typeof job.tasks[number]['hazards'] }[] => block.steps)].flatMap((one) => one.hazards).map(({ hazard, name }) => [hazard, name]));
  const gaps = job.blocks.flatMap((block) => (block.access !== null && block.gap !== null ? [block.gap] : []));
  const lacking = tools.filter((tool) => tool.lacking);
  return (
    <div className={styles.beside}>
      <div className={styles.cautions}>
        <Section title={tell('job.cautions')} hint={tell(dirty ? 'sheet-edit.beside-dirty' : 'sheet-edit.beside')}>
          <ul className={styles.plain}>
            {cautions.map(({ hazard, by, said }) => {
              const title = [hazard === null ? null : (names.get(hazard) ?? null), by === 'anyone' ? null : tell(`job.by-${by}`)].filter((one) => one !== null).join(', ');
              return <li key={said.code}>{title !== '' && <strong>{title}: </strong>}{said.text}</li>;
            })}
          </ul>
        </Section>
      </div>
      {job.lacks.length + gaps.length + lacking.length > 0 && (
        <Section title={tell('sheet-edit.wanting')}>
          <ul className={styles.plain}>
            {gaps.map(({ code, text }) => <li key={`${code} ${text}`}>{text}</li>)}
            {lacking.map((tool) => <li key={tool.name}>{tell('sheet-edit.tool-lacking', { tool: tool.name })} <Link href="/parts/tools">{tell('sheet-edit.to-tools')}</Link></li>)}
            {job.lacks.map(({ figure, name }) => <li key={figure}>{tell('sheet-edit.lacks', { figure: name })} <Link href={`/car/${car}/card`} aria-label={tell('job.enter-of', { figure: name })}>{tell('job.enter')}</Link></li>)}
          </ul>
          {job.lacks.length > 0 && <p className={sectionStyles.small}>{tell('job.lacks-what')}</p>}
        </Section>
      )}
    </div>
  );
}
