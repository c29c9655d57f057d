import { useRef, type ReactNode } from 'react';
import { NoticeBar } from '../ui/notices/notice-bar.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './frame.module.css';
import { Rail } from './rail.tsx';
import { SampleLine } from './sample-line.tsx';
import { useArrivalFocus } from './use-arrival-focus.ts';

interface FrameProps {
  readonly sample: boolean;
  readonly children: ReactNode;
}

/** What stands around every screen: the way to the others, what was just done, and whether it is all invented. */
export function Frame({ sample, children }: FrameProps) {
  const main = useRef<HTMLElement>(null);
  useArrivalFocus(main);
  return (
    <div className={styles.frame}>
      <a
        href="#screen"
        className={styles.skip}
        onClick={(event) => {
          event.preventDefault();
          main.current?.focus();
        }}
      >
        {tell('app.skip')}
      </a>
      <Rail />
      <div className={styles.side}>
        {sample && <SampleLine />}
        <main id="screen" ref={main} tabIndex={-1} className={styles.main}>{children}</main>
        <NoticeBar />
      </div>
    </div>
  );
}
