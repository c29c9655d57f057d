import { Button, Modal } from '@mantine/core';
import { tell } from '../../ui/words/tell.ts';
import type { SheetEntry } from './use-sheet-draft.ts';
import type { Leaving } from './use-leave-guard.ts';
import styles from './editor.module.css';

/** Asks what is to become of changes that are not saved, before the page is left. */
export function LeaveQuestion({ leaving, entry }: { readonly leaving: Leaving; readonly entry: SheetEntry }) {
  const onSave = async () => {
    if (await entry.save()) leaving.go();
    else leaving.stay();
  };
  return (
    <Modal opened={leaving.to !== null} onClose={leaving.stay} title={tell('sheet-edit.leave-title')} centered transitionProps={{ duration: 0 }} closeButtonProps={{ 'aria-label': tell('sheet-edit.leave-stay') }}>
      <div className={styles.question}>
        <p>{tell('sheet-edit.leave-what')}</p>
        <div className={styles.buttons}>
          <Button data-autofocus aria-disabled={entry.sending} onClick={() => void onSave()}>{tell('sheet-edit.leave-save')}</Button>
          <Button variant="default" onClick={leaving.go}>{tell('sheet-edit.leave-drop')}</Button>
          <Button variant="default" onClick={leaving.stay}>{tell('sheet-edit.leave-stay')}</Button>
        </div>
      </div>
    </Modal>
  );
}
