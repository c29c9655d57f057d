import { LoneKeysSwitch } from '../ui/keys/lone-keys-switch.tsx';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';

/** Whether keys of one character do anything by themselves. */
export function KeysSection() {
  return (
    <Section title={tell('keys.title')} hint={tell('keys.settings-what')}>
      <LoneKeysSwitch />
    </Section>
  );
}
