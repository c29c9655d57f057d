import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import { dueWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { MarkGlyph } from '../../ui/marks/mark-glyph.tsx';
import type { MarkShape } from '../../ui/marks/mark-shape.ts';
import { tell } from '../../ui/words/tell.ts';
import { valueText } from './value-words.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './wear.module.css';
import tones from '../../ui/tones.module.css';

type Verdict = WearSeriesView['limits'][number];

interface SeriesVerdictProps {
  readonly verdict: Verdict;
  readonly items: CarView['items'];
  readonly today: LocalDate;
}

/** What a series comes to by one of its limits: in short, in a sentence, and the limit with where it comes from. */
export function SeriesVerdict({ verdict, items, today }: SeriesVerdictProps) {
  const words = useWords();
  const shape = shapeOf(verdict, today);
  const short = verdict.verdict === 'wears' ? dueWords({ ...verdict, limb: 'wear', state: 'ahead' }, words) : tell(`verdict.${verdict.verdict}`);
  return (
    <div className={styles.verdict}>
      <p className={styles.short}><MarkGlyph {...shape} /> <strong className={tones[shape.tone]}>{short}</strong></p>
      <p className={sectionStyles.small}>{verdict.words.text}</p>
      <p className={sectionStyles.small}>{limitWords(verdict, items)}</p>
    </div>
  );
}

function shapeOf({ verdict, earliest }: Verdict, today: LocalDate): MarkShape {
  if (verdict === 'past-limit') return { shape: 'flag', filled: true, tone: 'late' };
  if (verdict !== 'wears') return { shape: 'question', filled: false, tone: 'plain' };
  const soon = earliest !== null && earliest <= today;
  return { shape: 'worn', filled: soon, tone: soon ? 'soon' : 'later' };
}

function limitWords({ limit, from, source, items: ids }: Verdict, items: CarView['items']): string {
  const said = valueText(limit);
  if (from === 'item') return tell('wear.limit-item', { limit: said, items: namesOf(ids, items) });
  const set = tell(from === 'series' ? 'wear.limit-series' : 'wear.limit-kind', { limit: said });
  return source === null ? set : tell('wear.limit-source', { limit: set, source });
}

/** The names of items, the last two joined by a word. */
export function namesOf(ids: readonly string[], items: CarView['items']): string {
  return joined(ids.map((id) => items.find((one) => one.item.id === id)?.item.name ?? id));
}

/** Words one after the other: 'one, two and three'. */
export function joined(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : tell('wear.and', { one: words.slice(0, -1).join(', '), other: last });
}
