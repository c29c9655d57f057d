import { useLocation } from 'wouter';
import { SideSheet } from '../side-sheet.tsx';
import { tell } from '../words/tell.ts';
import { KEYS, placesAt, type KeyPlace } from './keys.ts';
import styles from './keys.module.css';
import { LoneKeysSwitch } from './lone-keys-switch.tsx';
import { useLoneKeys } from './lone-keys.ts';

interface KeysSheetProps {
  readonly opened: boolean;
  readonly onClose: () => void;
}

/** Every key, those of the present screen first. */
export function KeysSheet({ opened, onClose }: KeysSheetProps) {
  const [location] = useLocation();
  const here = placesAt(location);
  const others = [...new Set(KEYS.map((one) => one.place))].filter((place) => place !== 'everywhere' && !here.includes(place));
  return (
    <SideSheet title={tell('keys.title')} opened={opened} onClose={onClose}>
      <LoneKeysSwitch />
      {[...here, 'everywhere' as const, ...others].map((place) => <KeysOf key={place} place={place} />)}
    </SideSheet>
  );
}

function KeysOf({ place }: { readonly place: KeyPlace }) {
  const [on] = useLoneKeys();
  return (
    <section aria-label={tell(`keys-of.${place}`)}>
      <h3 className={styles.place}>{tell(`keys-of.${place}`)}</h3>
      <dl className={styles.keys}>
        {KEYS.filter((one) => one.place === place).map(({ keys, does, lone }) => (
          <div key={does}>
            <dt>{keys.map((key) => <kbd key={key}>{key}</kbd>)}</dt>
            <dd>{tell(does)}{lone && !on && ` ${tell('keys.is-off')}`}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
