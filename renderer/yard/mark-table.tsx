import { memo } from 'react';
import { Link } from 'wouter';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { tell } from '../ui/words/tell.ts';
import type { LaneWithMarks } from './lane-with-marks.ts';
import type { YardMark } from './yard-mark.ts';
import { YardTable } from './yard-table.tsx';
import styles from './yard-table.module.css';

/** Every mark of the yard as a row of a table, soonest first in each car. */
export const MarkTable = memo(function MarkTable({ lanes }: { readonly lanes: readonly LaneWithMarks[] }) {
  const heads = [tell('table.car'), tell('table.what'), tell('table.state'), tell('table.when'), tell('table.why'), tell('table.work')];
  return <YardTable caption={tell('table.caption')} heads={heads}>{lanes.flatMap(({ marks }) => marks.map((mark) => <MarkRow key={mark.id} mark={mark} />))}</YardTable>;
});

function MarkRow({ mark }: { readonly mark: YardMark }) {
  return (
    <tr>
      <td>{mark.carName}</td>
      <th scope="row" className={styles.what}><Link href={mark.href}>{mark.name}</Link></th>
      <td><span className={styles.state}><MarkGlyph {...mark} /> {mark.standing}</span></td>
      <td>{mark.when}</td>
      <td>{mark.why}</td>
      <td>{mark.work.join(', ')}</td>
    </tr>
  );
}
