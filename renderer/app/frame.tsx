import { useRef, useState, type ReactNode } from 'react';
import { KeysSheet } from '../ui/keys/keys-sheet.tsx';
import { useGlobalKeys } from '../ui/keys/use-global-keys.ts';
import { NoticeBar } from '../ui/notices/notice-bar.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './frame.module.css';
import { Rail } from './rail.tsx';
import { SampleLine } from './sample-line.tsx';
import { SearchDialog } from './search/search-dialog.tsx';
import { Tour } from './tour/tour.tsx';
import { useArrivalFocus } from './use-arrival-focus.ts';
import { useArrivalPlace } from './use-arrival-place.ts';

interface FrameProps {
  readonly sample: boolean;
  readonly children: ReactNode;
}

/** What stands around every screen: the way to the others, what was just done, and whether it is all invented. */
export function Frame({ sample, children }: FrameProps) {
  const main = useRef<HTMLElement>(null);
  const [over, setOver] = useState<'search' | 'keys' | null>(null);
  useArrivalFocus(main);
  useArrivalPlace();
  useGlobalKeys({ onSearch: () => setOver('search'), onKeys: () => setOver('keys') });
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
      <Rail onSearch={() => setOver('search')} onKeys={() => setOver('keys')} />
      <div className={styles.side}>
        {sample && <SampleLine />}
        <main id="screen" ref={main} tabIndex={-1} className={styles.main}>{children}</main>
        <NoticeBar />
      </div>
      <Tour />
      <SearchDialog opened={over === 'search'} onClose={() => setOver(null)} />
      <KeysSheet opened={over === 'keys'} onClose={() => setOver(null)} />
    </div>
  );
}
