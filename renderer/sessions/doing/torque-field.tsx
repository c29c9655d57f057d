import { TextInput } from '@mantine/core';
import type { DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import type { SheetUnit } from '../sheet/sheet-choices.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';
import { numberOf, useReading } from './use-reading.ts';
import { Written } from './written.tsx';

interface TorqueFieldProps {
  readonly session: string;
  readonly step: DoingStep;
  readonly torque: DoingStep['torques'][number];
  readonly unit: SheetUnit;
}

/** To what a joint was tightened: as the sheet says in one press, or what the wrench was set to. */
export function TorqueField({ session, step, torque, unit }: TorqueFieldProps) {
  const found = step.values.find(({ read }) => read.kind === 'torque' && read.name === torque.name);
  const standing = found?.read.kind === 'torque' ? found.read : undefined;
  const reading = useReading('');
  const as = torque.inUnits.find((one) => one.unit === unit);
  const write = (value: number) => {
    const [at] = step.of;
    if (at !== undefined) void reading.write({ session, at, read: { kind: 'torque', name: torque.name, typed: { value, unit } } });
  };
  const writeTyped = () => {
    const value = numberOf(reading.text);
    if (value === null) reading.setFault(tell('doing.no-number'));
    else write(value);
  };
  return (
    <form className={styles.read} onSubmit={(event) => { event.preventDefault(); writeTyped(); }}>
      {as !== undefined && <BigButton pressed={standing?.typed.value === as.value && standing.typed.unit === unit} onPress={() => write(as.value)}>{tell('doing.tightened', { name: torque.name, value: as.text })}</BigButton>}
      <TextInput size="lg" label={tell('doing.torque-other', { name: torque.name, unit: tell(`job.unit-${unit}`) })} value={reading.text} error={reading.fault} inputMode="decimal" autoComplete="off" onChange={(event) => reading.setText(event.currentTarget.value)} />
      <BigButton onPress={writeTyped} label={tell('doing.write-of', { name: torque.name })}>{tell('doing.write')}</BigButton>
      {standing !== undefined && <Written text={`${standing.typed.value} ${tell(`job.unit-${standing.typed.unit}`)}`} step={step} value={found?.id} />}
    </form>
  );
}
