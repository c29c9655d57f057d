import type { JobSheet } from '../../shared-core/views/job-sheet-view-schema.ts';
import { tell } from './words/tell.ts';

type Caution = Pick<JobSheet['cautions'][number], 'name' | 'by' | 'said'>;

/** A caution: what it is of and who may do such work, then what to mind. */
export function CautionText({ name, by, said }: Caution) {
  const title = [name, by === 'anyone' ? null : tell(`job.by-${by}`)].filter((one) => one !== null).join(', ');
  return <>{title !== '' && <strong>{title}: </strong>}{said.text}</>;
}
