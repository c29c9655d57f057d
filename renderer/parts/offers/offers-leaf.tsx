import { TextInput } from '@mantine/core';
import { useDeferredValue, useState } from 'react';
import { Link } from 'wouter';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import type { Has } from './has.ts';
import { OffersSection } from './offers-section.tsx';
import { PartsSection } from './parts-section.tsx';
import { SpecificationsSection } from './specifications-section.tsx';
import { StaleAfter } from './stale-after.tsx';
import { SuppliersSection } from './suppliers-section.tsx';
import styles from '../parts.module.css';

interface OffersLeafProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** Who sells what at which price, the parts, and what they are to meet; one field finds in all of them. */
export function OffersLeaf({ view, open }: OffersLeafProps) {
  const [sought, setSought] = useState('');
  const find = useDeferredValue(sought.trim().toLowerCase());
  const has: Has = (...texts) => find === '' || texts.some((text) => text?.toLowerCase().includes(find) === true);
  const stale = view.offers.filter((one) => one.stale).length;
  const standing = view.offers.filter((one) => one.offer.withdrawnOn === null).length;
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>
        {standing === 0 ? tell('offers.none-lead') : tell('offers.sum', { n: standing })}{stale > 0 && ` ${tell('offers.sum-stale', { n: stale })}`} <Link href="/parts/prices">{tell('offers.take-in')}</Link>
      </p>
      <div className={styles.bar}>
        <TextInput className={styles.find ?? ''} label={tell('offers.find')} value={sought} onChange={(event) => setSought(event.currentTarget.value)} autoComplete="off" />
      </div>
      <OffersSection view={view} open={open} has={has} />
      <PartsSection view={view} open={open} has={has} />
      <SpecificationsSection view={view} open={open} has={has} />
      <SuppliersSection view={view} open={open} />
      <StaleAfter view={view} />
    </div>
  );
}
