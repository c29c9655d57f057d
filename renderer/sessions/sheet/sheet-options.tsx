import { Button, SegmentedControl } from '@mantine/core';
import { useId, type ReactNode } from 'react';
import { tell } from '../../ui/words/tell.ts';
import { SHEET_PAPERS, SHEET_UNITS, type SheetPaper, type SheetUnit } from './sheet-choices.ts';
import styles from './sheet.module.css';

interface SheetOptionsProps {
  readonly unit: SheetUnit;
  readonly onUnit: (unit: SheetUnit) => void;
  readonly paper: SheetPaper;
  readonly onPaper: (paper: SheetPaper) => void;
}

/** How the sheet is read and printed: the unit of torques, the paper, and the press that prints. */
export function SheetOptions({ unit, onUnit, paper, onPaper }: SheetOptionsProps) {
  return (
    <div className={styles.options} role="group" aria-label={tell('job.options')}>
      <Option name={tell('job.unit')}>{(id) => <SegmentedControl<SheetUnit> aria-labelledby={id} value={unit} onChange={onUnit} data={SHEET_UNITS.map((value) => ({ value, label: tell(`job.unit-${value}`) }))} />}</Option>
      <Option name={tell('job.paper')}>{(id) => <SegmentedControl<SheetPaper> aria-labelledby={id} value={paper} onChange={onPaper} data={SHEET_PAPERS.map((value) => ({ value, label: tell(`job.paper-${value}`) }))} />}</Option>
      <Button onClick={() => window.print()}>{tell('job.print')}</Button>
    </div>
  );
}

function Option({ name, children }: { readonly name: string; readonly children: (id: string) => ReactNode }) {
  const id = useId();
  return <div className={styles.option}><span id={id}>{name}</span>{children(id)}</div>;
}
