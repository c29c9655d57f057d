import { Link } from 'wouter';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { CautionText } from '../../ui/caution-text.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './editor.module.css';

/** What stands before the first step, and what is still wanting, as the sheet was saved last. */
export function Beside({ shown, dirty }: { readonly shown: ReplyOf<'sheet.show'>; readonly dirty: boolean }) {
  const { cautions, job, tools, car } = shown;
  const gaps = job.blocks.flatMap((block) => (block.access !== null && block.gap !== null ? [block.gap] : []));
  const lacking = tools.filter((tool) => tool.lacking);
  return (
    <div className={styles.beside}>
      <div className={styles.cautions}>
        <Section title={tell('job.cautions')} hint={tell(dirty ? 'sheet-edit.beside-dirty' : 'sheet-edit.beside')}>
          <ul className={styles.plain}>
            {cautions.map((one) => <li key={one.said.code}><CautionText name={one.name} by={one.by} said={one.said} /></li>)}
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
