import { useEffect, useId, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { StandingSession } from '../../shared-core/views/sessions-view-schema.ts';
import { tell } from '../ui/words/tell.ts';
import { focusSpot, spotOf } from './focus-spot.ts';
import { LABEL_ROW, POST_WIDTH, type PlacedPost, type PostLayout } from './post-layout.ts';
import styles from './posts.module.css';
import type { TimeScale } from './time-scale.ts';
import type { PostDrag } from './use-post-drag.ts';

interface PostBandProps {
  readonly layout: PostLayout;
  readonly scale: TimeScale;
  readonly drag: PostDrag;
  readonly onOpen: (session: StandingSession) => void;
  /** A key on a post; answers whether it was taken. */
  readonly onKey: (session: StandingSession, key: string) => boolean;
}

/** The band below the lanes: each post's label, with its day, place and number of tasks. One stop for the Tab key, arrow keys within. */
export function PostBand({ layout, scale, drag, onOpen, onKey }: PostBandProps) {
  const [current, setCurrent] = useState<string | null>(null);
  const { placed, before, later, rows } = layout;
  const hint = useId();
  const list = useFocusKept(placed);
  const stop = placed.find((one) => one.post.session.id === current) ?? placed[0];
  return (
    <li data-lane="" className={styles.band}>
      <div className={styles.bandHead}>
        <h2 className={styles.bandName}>{tell('posts.title')}</h2>
        <p id={hint} className={styles.bandHint}>{tell('posts.hint')}</p>
      </div>
      <div className={styles.bandTime} style={{ minHeight: rows * LABEL_ROW + 14 }}>
        {scale.todayX >= 0 && <div className={styles.bandToday} style={{ transform: `translateX(${scale.todayX}px)` }} aria-hidden="true" />}
        {placed.map(({ post, x, row }) => (
          <div key={post.session.id} aria-hidden="true" className={styles.stem} data-kept={post.kept} data-lifted={post.lifted} style={{ transform: `translateX(${x - POST_WIDTH / 2}px)`, width: POST_WIDTH, height: row * LABEL_ROW + 9 }} />
        ))}
        <ul ref={list} className={styles.labels} aria-label={tell('posts.title')}>
          {placed.map((one) => (
            <li key={one.post.session.id}>
              <PostLabel placed={one} hint={hint} stop={one === stop} drag={drag} onOpen={onOpen} onKey={onKey} onFocus={() => setCurrent(one.post.session.id)} />
            </li>
          ))}
        </ul>
      </div>
      <div className={styles.bandFoot}>{before.length > 0 && <Link href="/sessions">{tell('posts.before', { n: before.length })}</Link>}{later.length > 0 && <Link href="/sessions">{tell('posts.past', { n: later.length })}</Link>}</div>
    </li>
  );
}

interface PostLabelProps extends Pick<PostBandProps, 'drag' | 'onOpen' | 'onKey'> {
  readonly placed: PlacedPost;
  /** Names what the keys do. */
  readonly hint: string;
  readonly stop: boolean;
  readonly onFocus: () => void;
}

function PostLabel({ placed: { post, row, labelLeft, labelWidth }, hint, stop, drag, onOpen, onKey, onFocus }: PostLabelProps) {
  const { session, kept, lifted } = post;
  return (
    <button
      type="button"
      data-mark={`post/${session.id}`}
      data-spot={spotOf(session)}
      className={styles.label}
      data-kept={kept}
      data-lifted={lifted}
      tabIndex={stop ? 0 : -1}
      style={{ transform: `translate(${labelLeft}px, ${row * LABEL_ROW + 8}px)`, width: labelWidth }}
      aria-describedby={hint}
      onFocus={onFocus}
      onPointerDown={(event) => drag.begin(session, event)}
      onClick={() => !drag.wasDrag() && !lifted && onOpen(session)}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey || !onKey(session, event.key)) return;
        event.preventDefault();
        event.stopPropagation();
      }}
    >
      <span className={styles.labelDay}>{post.label}</span>
      <span className={styles.labelRest}>{post.rest}</span>
    </button>
  );
}

/** A post that is kept or moved comes back as another one: the focus goes to what stands in its place, else to the nearest post. */
function useFocusKept(placed: readonly PlacedPost[]) {
  const list = useRef<HTMLUListElement>(null);
  const had = useRef<string | null>(null);
  const ids = placed.map((one) => one.post.session.id).join(' ');
  useEffect(() => {
    const own = list.current;
    if (own === null) return undefined;
    const onFocusIn = (event: FocusEvent) => {
      const at = event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('[data-spot]') : null;
      had.current = at !== null && own.contains(at) ? (at.dataset['spot'] ?? null) : document.activeElement === document.body ? had.current : null;
    };
    document.addEventListener('focusin', onFocusIn);
    return () => document.removeEventListener('focusin', onFocusIn);
  }, []);
  useEffect(() => {
    if (had.current === null || document.activeElement !== document.body) return;
    focusSpot(list.current, had.current);
  }, [ids]);
  return list;
}
