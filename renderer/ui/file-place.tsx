import { useState, type ReactNode } from 'react';
import styles from './file-place.module.css';
import { useFileDrop } from './use-file-drop.ts';
import { tell } from './words/tell.ts';

interface FilePlaceProps {
  /** More than one file may be given. */
  readonly many?: boolean;
  readonly onFiles: (files: readonly File[]) => void;
  /** The button or field by which a file is chosen without a mouse. */
  readonly children: ReactNode;
}

/** Where a file is chosen or dropped. Of several dropped where one goes, none is taken and none silently left out. */
export function FilePlace({ many = false, onFiles, children }: FilePlaceProps) {
  const [tooMany, setTooMany] = useState(false);
  const drop = useFileDrop((files) => {
    const refused = !many && files.length > 1;
    setTooMany(refused);
    if (!refused) onFiles(files);
  });
  return (
    <div className={styles.place} data-over={drop.over} {...drop.place}>
      {children}
      <p className={styles.hint}>{drop.over ? tell('drop.let-go') : tell(many ? 'drop.many' : 'drop.one')}</p>
      <p role="alert" className={tooMany ? styles.fault : 'only-said'}>{tooMany && tell('drop.only-one')}</p>
    </div>
  );
}
