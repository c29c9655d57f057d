import { eyePath } from './mark-paths.ts';
import styles from './marks.module.css';

/** An eye over a day: something to look at again. */
export function Eye({ x }: { readonly x: number }) {
  const { rim, pupil } = eyePath(x);
  return (
    <>
      <path className={styles.outlined} d={rim} />
      <circle className={styles.filled} {...pupil} />
    </>
  );
}
