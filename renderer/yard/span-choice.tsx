import { SegmentedControl } from '@mantine/core';
import { tell } from '../ui/words/tell.ts';
import { SPANS, STEPS } from './calendar-sight.ts';
import styles from './sight.module.css';
import type { SightControl } from './use-sight.ts';

/** How far one looks ahead: five spans by their names, and the steps between them by minus and plus. */
export function SpanChoice({ control: { sight, setSpan, step } }: { readonly control: SightControl }) {
  const [least, most] = [sight.span === STEPS[0], sight.span === STEPS.at(-1)];
  return (
    <div className={styles.span}>
      <button type="button" aria-disabled={least} aria-label={tell('sight.nearer')} aria-keyshortcuts="-" onClick={() => !least && step(-1)}>−</button>
      <SegmentedControl aria-label={tell('yard.span')} value={String(sight.span)} onChange={(value) => setSpan(Number(value))} data={SPANS.map((months) => ({ value: String(months), label: tell(`span.${months}`) }))} />
      <button type="button" aria-disabled={most} aria-label={tell('sight.wider')} aria-keyshortcuts="+" onClick={() => !most && step(1)}>+</button>
    </div>
  );
}
