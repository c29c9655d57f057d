import { Radio } from '@mantine/core';
import { useState } from 'react';
import { LOOKS, type Look } from '../../shared-core/contract/look.ts';
import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { Section } from '../ui/section.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './settings.module.css';

/** Light or dark paper, and how strongly the ink stands on it. */
export function LookSection() {
  const state = useAsk('household.state', {});
  const [fault, setFault] = useState<string | null>(null);
  const choose = async (look: Look) => {
    const result = await change('look.set', { look });
    setFault(result.ok ? null : sayFault(result.refusal));
  };
  return (
    <Section title={tell('settings.look')}>
      <Radio.Group<Look> label={tell('settings.scheme')} description={tell('settings.look-what')} value={state.state === 'answered' ? state.value.look : 'system'} onChange={(look) => void choose(look)}>
        <div className={styles.looks}>
          {LOOKS.map((look) => <Radio key={look} value={look} label={tell(`look.${look}`)} />)}
        </div>
      </Radio.Group>
      <p className={styles.fault} role="alert">{fault}</p>
    </Section>
  );
}
