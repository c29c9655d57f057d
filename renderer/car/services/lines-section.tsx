import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { lineDone } from '../forms/record-draft.ts';
import { CoveredLine } from './covered-line.tsx';
import { LineStrip } from './line-strip.tsx';
import type { OpenServicesSheet } from './services-sheet.ts';
import { whoWords } from './visit.tsx';
import sectionStyles from '../../ui/section.module.css';
import styles from './services.module.css';

interface LinesSectionProps {
  readonly coverage: CoverageView;
  readonly openOwn: OpenServicesSheet;
}

/** A service: how far it is, by whom, and each of its lines. */
export function LinesSection({ coverage, openOwn }: LinesSectionProps) {
  const words = useWords();
  const [onlyOpen, setOnlyOpen] = useState(false);
  const { plan, lines, by } = coverage;
  const openLines = lines.filter((line) => line.state !== 'done');
  const shown = onlyOpen ? openLines : lines;
  const change = plan === null ? {} : { add: { label: tell('services.change'), onAdd: () => openOwn({ kind: 'service', service: plan.id }) } };
  return (
    <Section title={plan?.name ?? tell('services.all')} {...change}>
      <p className={sectionStyles.soft}>{daysWords(coverage, words)}</p>
      {lines.length > 0 && <LineStrip lines={lines} />}
      <p className={lines.length === 0 ? sectionStyles.soft : undefined}><strong>{coverage.text}</strong> {by.length > 0 && tell('services.by', { names: by.map(byWords).join(', ') })}</p>
      {lines.length > 0 && (
        <div className={styles.tools}>
          {openLines.length > 0 && <Button size="compact-md" onClick={() => openOwn({ kind: 'record', lines: openLines.map(lineDone) })}>{tell('services.record-open', { n: openLines.length })}</Button>}
          <Checkbox label={tell('services.only-open')} checked={onlyOpen} onChange={(event) => setOnlyOpen(event.currentTarget.checked)} />
        </div>
      )}
      <ul className={sectionStyles.list} aria-label={tell('services.lines')}>
        {shown.map((line, at) => <CoveredLine key={`${line.item ?? line.name} ${at}`} line={line} onRecord={() => openOwn({ kind: 'record', lines: [lineDone(line)] })} />)}
      </ul>
      {onlyOpen && openLines.length === 0 && <p className={sectionStyles.soft}>{tell('services.no-open')}</p>}
    </Section>
  );
}

function daysWords({ plan, from, today }: CoverageView, words: HouseholdWords): string {
  if (plan === null) return tell('services.all-what');
  if (plan.from > today) return tell('services.begins', { from: words.date(plan.from) });
  return plan.to === null ? tell('services.from', { from: words.date(from) }) : tell('services.from-to', { from: words.date(from), to: words.date(plan.to) });
}

function byWords(one: CoverageView['by'][number]): string {
  return tell('services.by-one', { name: whoWords(one), n: one.lines });
}
