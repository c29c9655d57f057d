import { Switch } from '@mantine/core';
import { tell } from '../words/tell.ts';
import { useLoneKeys } from './lone-keys.ts';

/** Turns the keys of one character on or off: who speaks to the computer, or is apt to brush a key, does without them. */
export function LoneKeysSwitch() {
  const [on, set] = useLoneKeys();
  return <Switch label={tell('keys.lone')} description={tell('keys.lone-what')} checked={on} onChange={(event) => set(event.currentTarget.checked)} />;
}
