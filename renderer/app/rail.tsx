import { Link, useLocation } from 'wouter';
import { KEYS_KEY, SEARCH_KEY } from '../ui/keys/keys.ts';
import { useLoneKeys } from '../ui/keys/lone-keys.ts';
import { tell, type WordKey } from '../ui/words/tell.ts';
import own from './rail-buttons.module.css';
import styles from './rail.module.css';
import { ScreenSign, type Sign } from './screen-sign.tsx';

interface Place {
  readonly sign: Sign;
  readonly href: string;
  readonly name: WordKey;
}

const PLACES: readonly Place[] = [
  { sign: 'yard', href: '/', name: 'screen.yard' },
  { sign: 'car', href: '/car', name: 'screen.car' },
  { sign: 'sessions', href: '/sessions', name: 'screen.sessions' },
  { sign: 'parts', href: '/parts', name: 'screen.parts' },
  { sign: 'papers', href: '/papers', name: 'screen.papers' },
  { sign: 'handover', href: '/handover', name: 'screen.handover' },
  { sign: 'ledger', href: '/ledger', name: 'screen.ledger' },
  { sign: 'settings', href: '/settings', name: 'screen.settings' },
];

interface RailProps {
  readonly onSearch: () => void;
  readonly onKeys: () => void;
}

/** The way to every screen there is, by its full name; to the search and to the keys before them. */
export function Rail({ onSearch, onKeys }: RailProps) {
  const [lone] = useLoneKeys();
  const [location] = useLocation();
  // A table that is taken in for the whole household belongs to what is kept, which stands in Settings.
  const place = location === '/import' ? '/settings' : location.startsWith('/paper/') ? '/papers' : location;
  const here = (href: string) => (href === '/' ? place === '/' : place === href || place.startsWith(`${href}/`));
  return (
    <nav data-tour="rail" className={styles.rail} aria-label={tell('app.screens')}>
      <p className={styles.name}>{tell('app.name')}</p>
      <button type="button" className={own.search} {...shortcut(lone, SEARCH_KEY)} onClick={onSearch}>{tell('search.open')}{lone && <kbd aria-hidden="true">{SEARCH_KEY}</kbd>}</button>
      <button type="button" className={own.keys} {...shortcut(lone, KEYS_KEY)} onClick={onKeys}>{tell('keys.open')}{lone && <kbd aria-hidden="true">{KEYS_KEY}</kbd>}</button>
      <ul>
        {PLACES.map(({ sign, href, name }, at) => (
          <li key={href}>
            <Link href={href} className={styles.place} {...shortcut(lone, String(at + 1))} aria-current={here(href) ? 'page' : undefined}>
              <ScreenSign sign={sign} />
              {tell(name)}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** Tells the key that does the same, to be heard and in a hint, while such keys do anything. */
function shortcut(on: boolean, key: string): { readonly 'aria-keyshortcuts'?: string; readonly title?: string } {
  return on ? { 'aria-keyshortcuts': key, title: tell('keys.hint', { key }) } : {};
}
