import { FileButton } from '@mantine/core';
import type { Doing, DoingStep } from '../../../shared-core/views/doing-schema.ts';
import { change } from '../../ui/change.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './doing.module.css';

/** A photograph of what is in hand: it goes with the car's record. */
export function PhotoButton({ doing, step }: { readonly doing: Doing; readonly step: DoingStep }) {
  const taken = doing.photos.filter((one) => one.car === step.car).length;
  const keep = async (file: File | null) => {
    if (file === null) return;
    const reply = await withPapers([file], ([paper = '']) => change('work.photo', { session: doing.session.id, car: step.car, at: step.of[0] ?? null, paper }));
    note(reply.ok ? tell('doing.photo-done', { car: step.carName }) : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
  };
  return (
    <FileButton accept="image/jpeg,image/png,image/webp" onChange={(file) => void keep(file)}>
      {(props) => <button type="button" {...props} className={styles.big}>{taken === 0 ? tell('doing.photo') : tell('doing.photo-more', { n: taken })}</button>}
    </FileButton>
  );
}
