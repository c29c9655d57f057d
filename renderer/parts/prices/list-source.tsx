import { Button, FileInput, Textarea } from '@mantine/core';
import { useState } from 'react';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import { FilePlace } from '../../ui/file-place.tsx';
import { sayFault } from '../../ui/form/say-fault.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { pastedPrices, priceFile, type PriceTable } from './price-table.ts';
import styles from '../parts.module.css';

/** Where the list comes from: a file, or what was copied from a page or an e-mail. */
export function ListSource({ onTable }: { readonly onTable: (table: PriceTable) => void }) {
  const [text, setText] = useState('');
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const take = (table: Result<PriceTable>) => {
    setRefusal(table.ok ? null : table.refusal);
    if (table.ok) onTable(table.value);
  };
  const read = ([file]: readonly File[]) => file !== undefined && void priceFile(file).then(take);
  return (
    <Section title={tell('prices.source')} hint={tell('prices.source-what')}>
      <div className={styles.bar}>
        <FilePlace onFiles={read}>
          <FileInput label={tell('prices.file')} placeholder={tell('prices.file-choose')} accept=".csv,.tsv,.txt,text/csv,text/plain" onChange={(file) => file !== null && read([file])} />
        </FilePlace>
      </div>
      <Textarea className={styles.pasted ?? ''} label={tell('prices.paste')} rows={4} value={text} onChange={(event) => setText(event.currentTarget.value)} />
      <Button variant="default" onClick={() => take(pastedPrices(text))}>{tell('prices.look')}</Button>
      <p role="alert" className={refusal === null ? 'only-said' : styles.fault}>{refusal !== null && sayFault(refusal)}</p>
    </Section>
  );
}
