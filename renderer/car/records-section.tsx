import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import { RecordEntry } from './record-entry.tsx';
import { TakeInLink } from './take-in-link.tsx';
import sectionStyles from '../ui/section.module.css';

interface RecordsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

const SHOWN = 8;

/** The work that was done, latest first. */
export function RecordsSection({ view, open }: RecordsSectionProps) {
  const [all, setAll] = useState(false);
  const { records } = view;
  const papers = new Map(view.papers.map((paper) => [paper.id, paper]));
  const readings = new Map(view.readings.map((reading) => [reading.id, reading]));
  return (
    <Section title={tell('records.title')} more={<TakeInLink car={view.car.id} />} add={{ label: tell('records.add'), onAdd: () => open({ kind: 'record', item: null }) }}>
      {records.length === 0 && <p className={sectionStyles.soft}>{tell('records.none')}</p>}
      <ol className={sectionStyles.list}>
        {(all ? records : records.slice(0, SHOWN)).map((one) => (
          <li key={one.record.id} id={`record-${one.record.id}`} tabIndex={-1} data-place>
            <RecordEntry one={one} papers={papers} reading={one.record.reading === null ? undefined : readings.get(one.record.reading)} />
          </li>
        ))}
      </ol>
      {records.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('records.fewer') : tell('records.all', { n: records.length })}</Button>}
    </Section>
  );
}
