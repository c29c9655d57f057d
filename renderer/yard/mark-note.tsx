import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { tell } from '../ui/words/tell.ts';
import type { MarkNoteControl, NotedMark } from './use-mark-note.ts';
import styles from './mark-note.module.css';
import tones from '../ui/tones.module.css';

const WIDTH = 320;
const MARGIN = 8;

/** Everything a mark says, written beside it while it is pointed at or has the focus. The mark's own name says the same to the ear. */
export function MarkNote({ note }: { readonly note: MarkNoteControl }) {
  const { noted, ways } = note;
  if (noted === null) return null;
  const { mark } = noted;
  return (
    <div key={mark.id} className={styles.note} style={placeOf(noted)} aria-hidden="true" onMouseEnter={ways.keep} onMouseLeave={ways.hideSoon}>
      <p className={styles.title}><MarkGlyph {...mark} /> {tell('waiting.row', { car: mark.carName, name: mark.name })}</p>
      <p><strong className={tones[mark.tone]}>{mark.standing}</strong> · {mark.when}</p>
      {mark.why !== '' && <p>{mark.why}</p>}
      {mark.work.length > 0 && <p className={styles.soft}>{mark.work.join(' · ')}</p>}
      <p className={styles.soft}>{tell('mark.opens')}</p>
    </div>
  );
}

/** Under the mark where there is room, else above it; never past the window's sides. */
function placeOf({ anchor }: NotedMark) {
  const left = Math.max(MARGIN, Math.min(anchor.left, window.innerWidth - WIDTH - MARGIN));
  const below = anchor.bottom + 190 < window.innerHeight || anchor.top < window.innerHeight / 2;
  return below ? { left, top: anchor.bottom + 4 } : { left, bottom: window.innerHeight - anchor.top + 4 };
}
