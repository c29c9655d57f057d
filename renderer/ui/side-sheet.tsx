import { Drawer } from '@mantine/core';
import type { ReactNode } from 'react';
import { tell } from './words/tell.ts';
import styles from './side-sheet.module.css';

interface SideSheetProps {
  readonly title: string;
  readonly opened: boolean;
  readonly onClose: () => void;
  /** Whether the focus goes back where it came from; false where something else is about to take it. */
  readonly returnFocus?: boolean;
  readonly children: ReactNode;
}

/** A sheet laid over the side of the screen for one entry. Escape closes it; the focus goes back to where it came from. */
export function SideSheet({ title, opened, onClose, returnFocus = true, children }: SideSheetProps) {
  return (
    <Drawer
      opened={opened}
      onClose={onClose}
      returnFocus={returnFocus}
      title={title}
      position="right"
      size="34rem"
      // At once: what has the focus is on the screen, and nothing moves under the eye.
      transitionProps={{ duration: 0 }}
      closeButtonProps={{ 'aria-label': tell('form.close') }}
      classNames={{ content: styles.content ?? '', header: styles.header ?? '', title: styles.title ?? '' }}
    >
      {children}
    </Drawer>
  );
}
