import { plainWords } from './plain-words.ts';

/** Words that join others and name no thing. */
const JOINING: ReadonlySet<string> = new Set(['a', 'an', 'and', 'at', 'for', 'in', 'its', 'of', 'on', 'or', 'the', 'to', 'with']);
/** One word in common says little: tyres are several items. */
const LEAST_COMMON = 2;

/**
 * Which of the names offered are near to one that is there, each with that one: the words of the shorter all stand in the
 * longer, two at least, or they are the same words. Near names may mean one thing or two: who keeps the car is to say.
 *
 * @example nearNames(['Engine air filter'], ['air filter']).get('Engine air filter') //=> 'air filter'
 */
export function nearNames(offered: readonly string[], there: readonly string[]): ReadonlyMap<string, string> {
  const known = there.map((name) => ({ name, words: wordsOf(name) }));
  return new Map(offered.flatMap((name) => {
    const near = known.find((one) => areNear(wordsOf(name), one.words));
    return near === undefined ? [] : [[name, near.name] as const];
  }));
}

function areNear(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  const common = [...one].filter((word) => other.has(word)).length;
  const [less, more] = [Math.min(one.size, other.size), Math.max(one.size, other.size)];
  return common > 0 && common === less && (common >= LEAST_COMMON || more === less);
}

/** The words of a name that count, each once, without the mark of the plural. */
function wordsOf(name: string): ReadonlySet<string> {
  return new Set(plainWords(name).filter((word) => !JOINING.has(word)).map((word) => (word.length > 3 ? word.replace(/s$/, '') : word)));
}
