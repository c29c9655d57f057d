import { Link, useLocation } from 'wouter';
import { tell, type WordKey } from '../ui/words/tell.ts';
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

/** The way to every screen there is, by its full name. */
export function Rail() {
  const [location] = useLocation();
  // A table that is taken in for the whole household belongs to what is kept, which stands in Settings.
  const place = location === '/import' ? '/settings' : location.startsWith('/paper/') ? '/papers' : location;
  const here = (href: string) => (href === '/' ? place === '/' : place === href || place.startsWith(`${href}/`));
  return (
    <nav className={styles.rail} aria-label={tell('app.screens')}>
      <p className={styles.name}>{tell('app.name')}</p>
      <ul>
        {PLACES.map(({ sign, href, name }) => (
          <li key={href}>
            <Link href={href} className={styles.place} aria-current={here(href) ? 'page' : undefined}>
              <ScreenSign sign={sign} />
              {tell(name)}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
