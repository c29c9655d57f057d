import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { KEYS } from '../../../../renderer/ui/keys/keys.ts';
import { SCREEN_WORDS } from '../../../../renderer/ui/words/tell.ts';
import { EN } from '../../../../shared-core/result/words/en.ts';

const ROOT = new URL('../../../../', import.meta.url).pathname;
const read = (file: string) => readFileSync(join(ROOT, file), 'utf8');

/** The words of the table in DEVELOPERS.md, by what they are: between backquotes in its second column. */
const table = new Map<string, Set<string>>();
for (const line of read('DEVELOPERS.md').split('## Where each word, state, command and shape comes from')[1]?.split('\n## ')[0]?.split('\n') ?? []) {
  const [, what = '', words = ''] = line.split(' | ').length === 3 ? /^\| ([^|]+) \| (.*) \| [^|]+ \|$/.exec(line) ?? [] : [];
  const known = table.get(what) ?? new Set<string>();
  for (const [, word = ''] of words.matchAll(/`([^`]+)`/g)) known.add(word);
  table.set(what, known);
}

const first = (phrase: unknown): string => (typeof phrase === 'string' ? phrase : (phrase as { readonly other: string }).other);
const screenWords = (keys: RegExp) => Object.entries(SCREEN_WORDS).filter(([key]) => keys.test(key)).map(([, phrase]) => first(phrase));
const coreWords = (keys: RegExp) => Object.entries(EN).filter(([key]) => keys.test(key)).map(([, phrase]) => first(phrase));
const sources = readdirSync(join(ROOT, 'renderer'), { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file) && !file.includes('words/')).map((file) => read(join('renderer', file))).join('\n');
const told = (...places: readonly RegExp[]) => places.flatMap((place) => [...sources.matchAll(place)].flatMap(([, key = '']) => (Object.hasOwn(SCREEN_WORDS, key) ? [first(SCREEN_WORDS[key as keyof typeof SCREEN_WORDS])] : [])));
const quoted = (text: string | undefined) => [...(text ?? '').matchAll(/'([^']+)'/g)].map(([, word = '']) => word);

describe('the table of where words come from', () => {
  test.each([
    { what: 'screens', words: screenWords(/^screen\.(?!lost|to-)/) },
    { what: 'leaves of Car', words: screenWords(/^leaf\./) },
    { what: 'leaves of Parts', words: screenWords(/^parts-leaf\./) },
    { what: 'leaves of Handover', words: screenWords(/^handover-leaf\./) },
    { what: 'leaves of Ledger', words: screenWords(/^ledger-leaf\./) },
    { what: 'states of what falls due', words: screenWords(/^state\.[a-z-]+$/) },
    { what: 'states of a follow-up', words: coreWords(/^follow-up-state-/) },
    { what: 'states of a wish', words: coreWords(/^wish-state-/) },
    { what: 'how a line of a service came out', words: screenWords(/^outcome\.(done|good|watch|acted|not-done)$/) },
    { what: 'how bad', words: screenWords(/^severity\.[a-z]+$/) },
    { what: 'what measurements say', words: screenWords(/^verdict\.[a-z-]+$/) },
    { what: 'obligations', words: coreWords(/^obligation-[a-z-]+$/).filter((word) => !word.endsWith('.')) },
    { what: 'kinds of cost', words: coreWords(/^cost-kind-/) },
    { what: 'hazards', words: coreWords(/^hazard-/) },
    { what: 'commands', words: readdirSync(join(ROOT, 'electron/cli/commands')).map((file) => file.replace('.ts', '')) },
    { what: 'shapes', words: quoted(/readonly shape: ([^;]+);/.exec(read('renderer/ui/marks/mark-shape.ts'))?.[1]) },
    { what: 'signs of the rail', words: quoted(/type Sign = ([^;]+);/.exec(read('renderer/app/screen-sign.tsx'))?.[1]) },
    { what: 'keys', words: KEYS.flatMap((one) => one.keys).flatMap((key) => (key === 'Shift ←' || key === 'Shift →' ? [] : [key])).filter((key) => key !== '…') },
    { what: 'headings', words: told(/<Section[^>]*? title=\{tell\('([\w.-]+)'/g, /<h[123][^>]*>\{tell\('([\w.-]+)'/g, /<ScreenTitle>\{tell\('([\w.-]+)'/g) },
  ])('holds all $what', ({ what, words }) => {
    expect(words.length).toBeGreaterThan(2);
    expect([...new Set(words)].filter((word) => table.get(what)?.has(word) !== true)).toEqual([]);
  });

  test('holds the first word of every button', () => {
    const labels = told(/<(?:Button|SmallButton|button)\b[^]*?>\s*\{tell\('([\w.-]+)'/g, /submit=\{tell\('([\w.-]+)'/g);
    const begins = new Set(labels.flatMap((label) => /^[A-Za-z]+/.exec(label)?.[0] ?? []));
    expect(begins.size).toBeGreaterThan(60);
    expect([...begins].filter((word) => table.get('first words of buttons')?.has(word) !== true)).toEqual([]);
  });

  test('names nothing that is no longer said', () => {
    const gone = (what: string, words: readonly string[]) => [...(table.get(what) ?? [])].filter((word) => !words.includes(word));
    expect(gone('commands', readdirSync(join(ROOT, 'electron/cli/commands')).map((file) => file.replace('.ts', '')))).toEqual([]);
    expect(gone('hazards', coreWords(/^hazard-/))).toEqual([]);
    const said = new Set(Object.values(SCREEN_WORDS).map(first));
    expect([...(table.get('headings') ?? [])].filter((word) => !said.has(word))).toEqual([]);
  });
});
