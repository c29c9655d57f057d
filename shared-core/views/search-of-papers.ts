import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { captureDay } from '../records/capture-time.ts';
import type { PaperContents } from '../records/paper-contents.ts';
import { paperNotes } from '../records/paper-note.ts';
import { papers, type Paper } from '../records/paper.ts';
import { datesInText } from '../records/text-dates.ts';
import { say } from '../result/words/say.ts';
import { paperUses } from './paper-uses.ts';
import type { SearchReading } from './search-terms.ts';
import { dayField, textField, type SearchThing } from './search-thing.ts';

/** The papers, with what was read from them where they have been looked into. */
export function thingsOfPapers(facts: Facts, look: (paper: string) => PaperContents | null, { order }: Pick<SearchReading, 'order'>, today: LocalDate): readonly SearchThing[] {
  const uses = paperUses(facts);
  return facts.all(papers).map((paper) => {
    const note = facts.get(paperNotes, paper.id);
    const contents = look(paper.id);
    const name = note?.name ?? paper.name;
    const day = note?.day ?? captureDay(contents?.capture ?? null, today);
    const text = contents?.text ?? '';
    return {
      kind: 'paper', id: paper.id, name, car: carOf(uses.get(paper.id) ?? []), date: day, href: `/paper/${paper.id}`,
      fields: [
        ...textField('name', 'name', name), ...textField('file', 'detail', name === paper.name ? null : paper.name), ...textField('paper-kind', 'detail', say({ key: `search-paper-${kindOf(paper)}`, values: {} })),
        ...textField('belongs-to', 'detail', ...(uses.get(paper.id) ?? []).map((use) => use.title)), ...textField('note', 'note', note?.note), ...textField('read-from-it', 'note', text),
        ...dayField('day', day), ...dayField('read-from-it', ...datesInText(text, order, today).filter((one) => one.first).map((one) => one.date)),
      ],
    };
  });
}

function kindOf({ media }: Paper): 'pdf' | 'picture' | 'other' {
  return media === 'application/pdf' ? 'pdf' : media === 'application/octet-stream' ? 'other' : 'picture';
}

/** The car of a paper that belongs to one car alone. */
function carOf(uses: readonly { readonly car: string | null }[]): string | null {
  const named = new Set(uses.map((use) => use.car));
  const [only = null] = named;
  return named.size === 1 ? only : null;
}
