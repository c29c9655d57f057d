import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './legend.module.css';
import postStyles from './posts.module.css';

/** What the marks mean, at the foot of the sheet. */
export function Legend() {
  return (
    <section className={styles.legend} aria-label={tell('legend.title')}>
      <ul>
        <li><MarkGlyph shape="bar" filled tone="soon" /> {tell('legend.bar')}</li>
        <li><MarkGlyph shape="worn" filled tone="soon" /> {tell('legend.worn')}</li>
        <li><MarkGlyph shape="wedge" filled tone="soon" /> {tell('legend.wedge')}</li>
        <li><MarkGlyph shape="bar" filled={false} tone="later" /> {tell('legend.outlined')}, {tell('legend.filled')}</li>
        <li><MarkGlyph shape="flag" filled tone="late" /> {tell('legend.flag')}</li>
        <li><MarkGlyph shape="pin" filled={false} tone="later" /> {tell('legend.pin')}</li>
        <li><MarkGlyph shape="eye" filled={false} tone="later" /> {tell('legend.eye')}</li>
        <li><span className={postStyles.sample} data-kept="true" /> <span className={postStyles.sample} data-kept="false" /> {tell('legend.post')}</li>
        <li><span className={styles.hatch} /> {tell('legend.hatch')}</li>
      </ul>
      <p>{tell('legend.keys')}</p>
    </section>
  );
}
