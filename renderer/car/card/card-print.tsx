import { Button } from '@mantine/core';
import { useState } from 'react';
import { createPortal } from 'react-dom';
import type { CardView } from '../../../shared-core/views/card-view.ts';
import { tell } from '../../ui/words/tell.ts';
import { CardSheet } from './card-sheet.tsx';
import styles from './card.module.css';

/** Prints the card. The sheet stands ready out of sight, so that the browser's own way of printing prints it too. */
export function CardPrint({ card }: { readonly card: CardView }) {
  const [fits, setFits] = useState(true);
  return (
    <>
      <Button onClick={() => window.print()}>{tell('card.print')}</Button>
      {!fits && <p className={styles.counts}>{tell('card.print-long')}</p>}
      {createPortal(<CardSheet card={card} onFit={setFits} />, document.body)}
    </>
  );
}
