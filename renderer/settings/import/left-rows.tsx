import { useWords } from '../../ui/household.tsx';
import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { Paged } from './paged.tsx';
import { understoodWords, type ImportedRow } from './row-words.ts';
import { WrittenCells } from './written-cells.tsx';
import sectionStyles from '../../ui/section.module.css';
import rowStyles from './rows.module.css';

interface LeftRowsProps {
  readonly view: ImportView;
  readonly state: 'refused' | 'set-aside' | 'duplicate';
}

const PAGE = 25;
const WORDS = { 'refused': 'refused', 'set-aside': 'aside', 'duplicate': 'duplicate' } as const;

/** Every row that is not simply taken in, by its line, with the reason. */
export function LeftRows({ view, state }: LeftRowsProps) {
  const rows = view.rows.filter((row) => row.state === state);
  if (rows.length === 0) return null;
  const title = tell(`import.${WORDS[state]}`);
  return (
    <Section id={`import-${state}`} title={title} hint={tell(`import.${WORDS[state]}-what`)}>
      <Paged items={rows} size={PAGE} label={title}>
        {(shown) => <ul className={sectionStyles.list}>{shown.map((row) => <LeftRow key={row.line} row={row} view={view} />)}</ul>}
      </Paged>
    </Section>
  );
}

function LeftRow({ row, view }: { readonly row: ImportedRow; readonly view: ImportView }) {
  const words = useWords();
  const [main] = understoodWords(row, view.cars, words);
  return (
    <li className={rowStyles.left}>
      <strong>{tell('import.row-line', { line: row.line })}</strong>
      <div>
        <p>{row.state === 'set-aside' && main !== undefined && <strong>{main}. </strong>}{row.text}</p>
        <WrittenCells cells={row.cells} columns={view.columns} />
      </div>
    </li>
  );
}
