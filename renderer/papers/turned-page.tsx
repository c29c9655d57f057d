import { useState, type ReactNode } from 'react';
import type { PaperLine } from '../../shared-core/views/papers-view.ts';
import { pageAddress } from '../bridge/paper-address.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './papers.module.css';

interface TurnedPageProps {
  readonly paper: PaperLine;
  readonly page: number;
  readonly percent: number;
  /** What lies over the page, in the frame that it has once it is turned. */
  readonly children?: ReactNode;
}

/** A page in a frame of the shape that it has once it is turned, so that all of it can be reached. */
export function TurnedPage({ paper, page, percent, children }: TurnedPageProps) {
  const [{ width, height }, setShape] = useState({ width: 1, height: 1 });
  const sideways = paper.turned === 90 || paper.turned === 270;
  return (
    <div className={styles.frame} style={{ width: `${percent}%`, aspectRatio: sideways ? `${height} / ${width}` : `${width} / ${height}` }}>
      <img
        src={pageAddress(paper.id, page)}
        alt={tell('paper.picture', { page, name: paper.name })}
        draggable={false}
        data-turned={paper.turned}
        style={{ width: sideways ? `${(100 * width) / height}%` : '100%' }}
        onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) => setShape({ width: naturalWidth, height: naturalHeight })}
      />
      {children}
    </div>
  );
}
