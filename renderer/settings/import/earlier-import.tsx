import { Button } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import type { Refusal } from '../../../shared-core/result/result.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { broughtWords } from './count-words.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';

type StandingImport = ReplyOf<'import.standing'>['imports'][number];

/** One table taken in before: what it brought, and the way to withdraw it whole, or why that is no longer possible. */
export function EarlierImport({ one }: { readonly one: StandingImport }) {
  const words = useWords();
  const [asked, setAsked] = useState(false);
  const open = useRef<HTMLButtonElement>(null);
  const name = one.file ?? tell('import.unnamed');
  return (
    <li className={styles.earlier}>
      <div className={styles.earlierWords}>
        <p><strong>{name}</strong></p>
        <p className={sectionStyles.soft}>{tell('imports.one', { what: broughtWords(one) ?? '', date: words.date(one.on) })}</p>
        {one.held !== null && <p>{heldWords(one.held, words.date)}</p>}
      </div>
      {one.held === null && <Button ref={open} size="compact-md" variant="default" aria-expanded={asked} aria-label={tell('imports.withdraw-named', { name, date: words.date(one.on) })} onClick={() => setAsked(!asked)}>{tell('imports.withdraw')}</Button>}
      {asked && one.held === null && (
        <Sure
          id={one.id}
          name={name}
          onLeave={() => {
            setAsked(false);
            open.current?.focus();
          }}
        />
      )}
    </li>
  );
}

function heldWords({ by, on, entry, car }: NonNullable<StandingImport['held']>, date: (date: string) => string): string {
  if (by === 'seal') return tell('imports.held-seal');
  return tell(car === null ? 'imports.held-entry' : 'imports.held-entry-car', { on: on === null ? '' : date(on), entry: entry ?? 0, car: car ?? '' });
}

/** Asks once more: what is withdrawn does not come back by itself. */
function Sure({ id, name, onLeave }: { readonly id: string; readonly name: string; readonly onLeave: () => void }) {
  const client = useQueryClient();
  const [sending, setSending] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const yes = useRef<HTMLButtonElement>(null);
  useEffect(() => yes.current?.focus(), []);
  const withdraw = async () => {
    if (sending) return;
    setSending(true);
    const result = await change('import.withdraw', { id });
    if (result.ok) await client.invalidateQueries({ queryKey: ['import.standing'] });
    setSending(false);
    if (!result.ok) return setRefusal(result.refusal);
    note(tell('imports.withdrawn', { name }));
    document.getElementById('import-earlier')?.focus();
  };
  return (
    <div className={styles.sure}>
      <p>{tell('imports.sure')}</p>
      <p role="alert" className={refusal === null ? 'only-said' : styles.fault}>{refusal !== null && sayFault(refusal)}</p>
      <div className={styles.buttons}>
        <Button ref={yes} size="compact-md" onClick={() => void withdraw()} aria-disabled={sending}>{sending ? tell('imports.withdrawing') : tell('imports.withdraw-all')}</Button>
        <Button size="compact-md" variant="default" onClick={onLeave}>{tell('imports.leave')}</Button>
      </div>
    </div>
  );
}
