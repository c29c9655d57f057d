import { Button, NativeSelect, Textarea } from '@mantine/core';
import { useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { OrderSheet } from '../../../shared-core/views/order-sheets.ts';
import { choices } from '../../ui/form/choices.ts';
import { saveText } from '../../ui/save-text.ts';
import { tell } from '../../ui/words/tell.ts';
import { PrintedOrder } from './printed-order.tsx';
import styles from '../parts.module.css';

type Kind = 'mail' | 'counter' | 'csv';

/** The sheet of an order: to print, and as text for an e-mail, a list for a counter, a table; each can be copied or saved. */
export function SheetPanel({ sheet }: { readonly sheet: OrderSheet }) {
  const [kind, setKind] = useState<Kind>('mail');
  const [told, setTold] = useState('');
  const text = useRef<HTMLTextAreaElement>(null);
  const copy = () => {
    text.current?.select();
    // Works without asking for a permission, which the window gives to no page.
    setTold(tell(document.execCommand('copy') ? 'sheet-panel.copied' : 'sheet-panel.not-copied'));
  };
  return (
    <div className={styles.leaf}>
      <p>{tell('sheet-panel.what')}</p>
      <NativeSelect data-autofocus label={tell('sheet-panel.as')} value={kind} onChange={(event) => { setKind(event.currentTarget.value as Kind); setTold(''); }} data={choices('sheet-panel.as-', ['mail', 'counter', 'csv'])} />
      <Textarea ref={text} className={styles.text ?? ''} label={tell(`sheet-panel.as-${kind}`)} value={sheet[kind]} readOnly rows={14} />
      <div className={styles.actions}>
        <Button onClick={copy}>{tell('sheet-panel.copy')}</Button>
        <Button variant="default" onClick={() => saveText(fileName(sheet, kind), sheet[kind], kind === 'csv' ? 'text/csv' : 'text/plain')}>{tell('sheet-panel.save')}</Button>
        <Button variant="default" onClick={() => window.print()}>{tell('sheet-panel.print')}</Button>
      </div>
      <p role="status">{told}</p>
      {createPortal(<PrintedOrder sheet={sheet} />, document.body)}
    </div>
  );
}

/** A name that every disk takes. */
function fileName({ supplierName, on }: OrderSheet, kind: Kind): string {
  return `${tell('sheet-panel.file')}-${supplierName.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '')}-${on}.${kind === 'csv' ? 'csv' : 'txt'}`;
}
