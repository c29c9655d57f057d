import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from './record.module.css';

/** What the record holds of what a full entry must hold, and what is missing: a stranger reads it so. */
export function RecordElements({ view: { elements } }: { readonly view: RecordView }) {
  return (
    <Section title={tell('record.elements', { n: elements.filter((one) => one.held).length, of: elements.length })} hint={tell('record.elements-what')}>
      <ul className={styles.plain}>
        {elements.map(({ of, element, held, withheld }) => (
          <li key={element}><span aria-hidden="true" className={held ? styles.held : styles.missing}>{held ? '✓' : '–'}</span> {tell(`element.${element}`)}<span className={styles.soft}>{` · ${tell(held ? 'record.element-held' : withheld ? 'earlier.element-withheld' : 'record.element-missing')}${of === 'inspection' ? `, ${tell('record.of-inspection')}` : ''}`}</span></li>
        ))}
      </ul>
    </Section>
  );
}
