import { Button } from '@mantine/core';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './pack-written.module.css';

interface PackWrittenProps {
  readonly written: ReplyOf<'pack.write'>;
  readonly onClose: () => void;
}

/** Where the pack stands, and its seal to be copied or noted. */
export function PackWritten({ written, onClose }: PackWrittenProps) {
  return (
    <div className={styles.written}>
      <p role="status" className={styles.done}>{tell('pack.done', { files: written.files })}</p>
      {written.notes.map((note) => <p key={note}>{note}</p>)}
      <dl>
        <dt>{tell('pack.path')}</dt>
        <dd className={styles.path}>{written.path}</dd>
        <dt>{tell('pack.seal')}</dt>
        <dd><pre className={styles.seal} tabIndex={0} aria-label={tell('pack.seal')}>{written.seal}</pre></dd>
      </dl>
      <Button data-autofocus autoFocus onClick={onClose}>{tell('pack.close')}</Button>
    </div>
  );
}
