import { useLocalStorage } from '@mantine/hooks';

const KEPT = 'trunnion-lone-keys';

/** Whether keys of one printed character do something by themselves; kept in this browser or window, like light and dark. */
export function loneKeysOn(): boolean {
  return window.localStorage.getItem(KEPT) !== 'off';
}

/** The same for a switch: whether they do, and how to change it. */
export function useLoneKeys(): readonly [on: boolean, set: (on: boolean) => void] {
  const [kept, keep] = useLocalStorage<'on' | 'off'>({ key: KEPT, defaultValue: 'on', getInitialValueInEffect: false, serialize: (value) => value, deserialize: (value) => (value === 'off' ? 'off' : 'on') });
  return [kept === 'on', (on) => keep(on ? 'on' : 'off')];
}
