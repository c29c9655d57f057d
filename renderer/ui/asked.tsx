import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import styles from './asked.module.css';
import { sayFault } from './form/say-fault.ts';
import type { Answer } from './use-ask.ts';
import { tell } from './words/tell.ts';

interface AskedProps<Reply> {
  readonly answer: Answer<Reply>;
  readonly children: (value: Reply) => ReactNode;
  /** What to offer where it is refused: a way on. */
  readonly onward?: ReactNode;
}

/** Shows an answer of the host, or that it is asked for, failed or refused. */
export function Asked<Reply>({ answer, children, onward }: AskedProps<Reply>) {
  switch (answer.state) {
    case 'asking':
      return <p className={styles.asking} role="status">{tell('asking')}</p>;
    case 'failed':
      return (
        <div className={styles.trouble} role="alert">
          <h2>{tell('failed.title')}</h2>
          <p>{sayFault(answer.refusal)}</p>
          <Button onClick={answer.again}>{tell('failed.again')}</Button>
        </div>
      );
    case 'refused':
      return (
        <div className={styles.trouble} role="alert">
          <h2>{tell('refused.title')}</h2>
          <p>{sayFault(answer.refusal)}</p>
          {onward}
        </div>
      );
    case 'answered':
      return children(answer.value);
  }
}
