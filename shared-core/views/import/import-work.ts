import { matchItem, speaksOfCheck, type ItemMatch } from '../../care/match-item.ts';
import { serviceItems, type ServiceItem } from '../../care/service-item.ts';
import type { Car } from '../../fleet/car.ts';
import { sameName } from '../../fleet/find-car.ts';
import type { Facts } from '../../journal/facts.ts';
import { cutName } from './import-cells.ts';
import type { ImportChoices } from './import-choices.ts';
import type { ImportView } from './import-view.ts';

/** One piece of work that a row names, and what it is taken for. */
export interface MeantLine {
  readonly text: string;
  readonly item: ServiceItem | null;
  readonly name: string;
  readonly work: 'replace' | 'check';
  readonly how: 'choice' | ItemMatch['how'];
}

type KnownText = ImportView['items'][number];

/** Reads the texts of the column of work, and keeps what was found of each. */
export interface WorkReader {
  read(car: Car, text: string): readonly MeantLine[];
  /** Every text read, once for a car, in the order first met. */
  texts(): readonly KnownText[];
}

/** What surely parts two pieces of work in one cell. */
const PARTS = /\s*(?:[\n;|]|\s\+\s)\s*/;
/** A comma parts them only where what it parts is an item: else it may be part of a name. */
const COMMA = /,\s+/;

/**
 * Reads what was done: an item of the car by its name or what the person says it is, else a line of its own. Several pieces of
 * work in one cell become several lines.
 *
 * @example workReader(facts, []).read(pip, 'Brake fluid; wash')[0]?.item?.name //=> 'Brake fluid'
 */
export function workReader(facts: Facts, chosen: ImportChoices['items']): WorkReader {
  const known = new Map<string, { line: MeantLine; seen: KnownText & { rows: number } }>();
  const one = (car: Car, text: string) => {
    const key = `${car.id} ${text.normalize('NFC').toLowerCase()}`;
    const found = known.get(key) ?? entryOf(facts, car, text, chosen);
    known.set(key, found);
    return found;
  };
  return {
    read: (car, text) =>
      partsOf(text, (part) => one(car, part).line.item !== null).map((part) => {
        const { line, seen } = one(car, part);
        seen.rows += 1;
        return { ...line, text: part };
      }),
    texts: () => [...known.values()].map(({ seen }) => seen).filter(({ rows }) => rows > 0),
  };
}

function partsOf(text: string, isItem: (part: string) => boolean): readonly string[] {
  if (text === '' || isItem(text)) return text === '' ? [] : [text];
  return text.split(PARTS).filter((part) => part !== '').flatMap((part) => {
    const parts = part.split(COMMA).filter((piece) => piece !== '');
    return parts.length > 1 && !isItem(part) && parts.some(isItem) ? parts : [part];
  });
}

function entryOf(facts: Facts, car: Car, text: string, chosen: ImportChoices['items']): { line: MeantLine; seen: KnownText & { rows: number } } {
  const items = facts.ofCar(serviceItems, car.id);
  const choice = chosen.find((one) => sameName(one.text, text) && (one.item === null || items.some(({ id }) => id === one.item)));
  const match = matchItem(text, items);
  const item = choice === undefined ? ('item' in match ? match.item : null) : (items.find(({ id }) => id === choice.item) ?? null);
  const how = choice === undefined ? match.how : 'choice';
  const near = match.how === 'several' ? match.items : match.how === 'none' ? match.near : [];
  const name = item?.name ?? cutName(text);
  const line: MeantLine = { text, item, name, work: speaksOfCheck(text) ? 'check' : (item?.work ?? 'replace'), how };
  return { line, seen: { text, car: car.id, item: item?.id ?? null, name, how, rows: 0, near: near.map(({ id, name: called }) => ({ id, name: called })) } };
}
