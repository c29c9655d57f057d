import { CloseButton } from '@mantine/core';
import { change } from '../change.ts';
import { sayFault } from '../form/say-fault.ts';
import { tell } from '../words/tell.ts';
import styles from './notice-bar.module.css';
import { closeNote, note, useNote } from './notice-store.ts';

/** The line at the foot of every screen that says what was just done and takes it back. */
export function NoticeBar() {
  const notice = useNote();
  return (
    <section aria-label={tell('notice.place')} className={styles.place} data-notice={notice !== null}>
      <p role="status" className={notice === null ? 'only-said' : styles.text}>{notice?.text ?? ''}</p>
      {notice !== null && notice.undo.length > 0 && (
        <button type="button" className={styles.undo} onClick={() => void undo(notice.undo)}>{tell('notice.undo')}</button>
      )}
      {notice !== null && <CloseButton aria-label={tell('notice.close')} className={styles.close ?? ''} onClick={closeNote} />}
    </section>
  );
}

async function undo(entries: readonly number[]): Promise<void> {
  const result = await change('entry.withdraw', { entries: [...entries] });
  note(result.ok ? tell('notice.undone') : sayFault(result.refusal));
}
