import { NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { measuredUnitSchema, type MeasuredUnit } from '../../../shared-core/units/measured-value.ts';
import { tell } from '../../ui/words/tell.ts';
import { measureWords } from '../sheet/figure-words.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';
import { numberOf, useReading } from './use-reading.ts';
import { Written } from './written.tsx';

interface MeasureFieldProps {
  readonly session: string;
  readonly step: DoingStep;
  readonly measure: NonNullable<DoingStep['measure']>;
}

/** What is measured at the step: written down at once, and again over what was read before. */
export function MeasureField({ session, step, measure }: MeasureFieldProps) {
  const value = step.values.find(({ read }) => read.kind === 'measured' && read.what === measure.kind && read.name === measure.name && read.place === measure.place);
  const standing = value?.read.kind === 'measured' ? value.read : undefined;
  const reading = useReading(standing === undefined ? '' : String(standing.typed.value));
  const [unit, setUnit] = useState<MeasuredUnit>(standing?.typed.unit ?? measure.unit ?? '1');
  const write = () => {
    const typed = numberOf(reading.text);
    const [at] = step.of;
    if (typed === null || at === undefined) return reading.setFault(tell('doing.no-number'));
    void reading.write({ session, at, read: { kind: 'measured', what: measure.kind, name: measure.name, place: measure.place, typed: { value: typed, unit } } });
  };
  return (
    <form className={styles.read} onSubmit={(event) => { event.preventDefault(); write(); }}>
      <TextInput size="lg" label={measureWords(measure).replace(/:$/, '')} value={reading.text} error={reading.fault} inputMode="decimal" autoComplete="off" onChange={(event) => reading.setText(event.currentTarget.value)} />
      {measure.unit === null
        ? <NativeSelect size="lg" label={tell('doing.unit')} value={unit} data={measuredUnitSchema.options.map((one) => ({ value: one, label: tell(`measured-unit.${one}`) }))} onChange={(event) => setUnit(event.currentTarget.value as MeasuredUnit)} />
        : <span className={styles.unit}>{tell(`sheet-unit.${unit}`)}</span>}
      <BigButton onPress={write}>{tell('doing.write')}</BigButton>
      {standing !== undefined && <Written text={`${standing.typed.value} ${tell(`sheet-unit.${standing.typed.unit}`)}`} step={step} value={value?.id} />}
    </form>
  );
}
