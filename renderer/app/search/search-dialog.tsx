import { Modal, TextInput } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useDeferredValue, useState, type KeyboardEvent } from 'react';
import { useLocation } from 'wouter';
import { focusHeading } from '../../ui/screen-title.tsx';
import { tell } from '../../ui/words/tell.ts';
import { goToPlace } from '../use-arrival-place.ts';
import { FoundThings } from './found-things.tsx';
import styles from './search.module.css';

/** As long as somebody types on, nothing is asked. */
const PAUSE = 90;
const LONGEST = 200;

interface SearchDialogProps {
  readonly opened: boolean;
  readonly onClose: () => void;
}

/** The search of the whole household: one field, and what is found under it while one types. */
export function SearchDialog({ opened, onClose }: SearchDialogProps) {
  const [, navigate] = useLocation();
  const [gone, setGone] = useState(false);
  const go = (href: string) => {
    const [path = '', place] = href.split('#');
    const here = window.location.pathname === path;
    // The focus goes to what was found, not back to where it came from.
    setGone(true);
    onClose();
    requestAnimationFrame(() => {
      if (here && place !== undefined && window.location.hash === `#${place}`) return void goToPlace(place);
      navigate(href);
      if (place === undefined) requestAnimationFrame(() => focusHeading({ preventScroll: true }));
    });
  };
  return (
    <Modal
      opened={opened}
      onClose={onClose}
      onEnterTransitionEnd={() => setGone(false)}
      returnFocus={!gone}
      title={tell('search.title')}
      size="44rem"
      transitionProps={{ duration: 0 }}
      closeButtonProps={{ 'aria-label': tell('form.close') }}
      classNames={{ content: styles.content ?? '', header: styles.content ?? '', title: styles.title ?? '' }}
    >
      {opened && <SearchBody onGo={go} />}
    </Modal>
  );
}

function SearchBody({ onGo }: { readonly onGo: (href: string) => void }) {
  const [typed, setTyped] = useState('');
  const [said, setSaid] = useState('');
  const [paused] = useDebouncedValue(typed.trim(), PAUSE);
  const query = useDeferredValue(paused);
  return (
    <div onKeyDown={moveAmongFound}>
      <TextInput
        data-autofocus data-search-field type="search" label={tell('search.field')} value={typed} maxLength={LONGEST} autoComplete="off" spellCheck={false}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          if (event.currentTarget.value.trim() === '') setSaid('');
        }}
      />
      <p role="status" className={styles.status}>{typed.trim() === '' ? '' : said}</p>
      {query === '' ? <p className={styles.said}>{tell('search.can')}</p> : <FoundThings query={query} onGo={onGo} onSaid={setSaid} />}
    </div>
  );
}

/** Up and down go from the field through what was found, and back to it; Enter in the field opens the first. */
function moveAmongFound(event: KeyboardEvent<HTMLElement>): void {
  const list = event.currentTarget;
  const found = [...list.querySelectorAll<HTMLElement>('[data-found]')];
  const at = found.indexOf(event.target as HTMLElement);
  if (event.key === 'Enter' && at < 0) {
    event.preventDefault();
    return list.querySelector<HTMLElement>('a[data-found]')?.click();
  }
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  event.preventDefault();
  const next = at + (event.key === 'ArrowDown' ? 1 : -1);
  (next < 0 ? list.querySelector<HTMLElement>('[data-search-field]') : found[Math.min(next, found.length - 1)])?.focus();
}
