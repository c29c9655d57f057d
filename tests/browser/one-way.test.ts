import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { contract, type OperationName } from '../../shared-core/contract/contract.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const sources = new Map(readdirSync(join(ROOT, 'renderer'), { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name)).map((name) => [join('renderer', name), readFileSync(join(ROOT, 'renderer', name), 'utf8')]));
const CALLED = /\b(?:change|doChange|call)\(\s*'([a-z-]+\.[a-z-]+)'/g;
/** The undo of the reply is passed on: by name, or by the helper that notes it. */
const NOTES = /\bundo\b|\bdoChange\(/;

/** Each change that a file of the page sends, with the files in which its undo may be noted: itself, and those that import it. */
const sent = [...sources].flatMap(([file, text]) => {
  const near = [text, ...[...sources.values()].filter((other) => other.includes(`/${basename(file)}'`))];
  return [...new Set([...text.matchAll(CALLED)].map(([, name = '']) => name))].map((name) => ({ file, name, notes: near.some((one) => NOTES.test(one)) }));
});

interface Exception {
  /** Why no undo is offered. */
  readonly why: string;
  /** What asks before it is done, in the file that does it; null where nothing is lost. */
  readonly asks: RegExp | null;
}

/** The changes whose reply is not noted with Undo. */
const WITHOUT_UNDO: Readonly<Record<string, Exception>> = {
  'household.start': { why: 'there is nothing before it to go back to', asks: null },
  'sample.open': { why: 'leaving the sample goes back; one’s own household is not touched', asks: null },
  'sample.leave': { why: 'all in it is invented, and opening it again brings it back', asks: null },
  'seal.give': { why: 'a seal is out of the house once it is given', asks: /WorkAsked/ },
  'record.take-back': { why: 'it is itself the taking back, and stays in the journal with its reason', asks: /useEntry/ },
  'import.withdraw': { why: 'it is itself the taking back; the file brings it again', asks: /imports\.sure/ },
  'work.begin': { why: 'it notes that the cautions were read', asks: null },
  'work.tick': { why: 'the same button takes the tick away', asks: null },
  'work.untick': { why: 'the same button ticks again', asks: null },
  'work.time': { why: 'time runs on or stops by the same button', asks: null },
  'work.read': { why: 'another value takes its place', asks: null },
  'look.set': { why: 'it is no entry of the household; the row beside it goes back', asks: null },
  'paper.describe': { why: 'a paper is turned back by the same button; what is said of it is noted with Undo', asks: null },
};

describe('one way to take back', () => {
  const changes = sent.filter(({ name }) => contract[name as OperationName]?.kind === 'do');

  test('finds the changes that the page sends, all of them operations', () => {
    expect(sent.filter(({ name }) => !Object.hasOwn(contract, name))).toEqual([]);
    expect(new Set(changes.map((one) => one.name)).size).toBeGreaterThan(80);
  });

  test('every change is noted with Undo, or stands in the list with its reason', () => {
    expect(changes.filter(({ name, notes }) => !notes && !Object.hasOwn(WITHOUT_UNDO, name)).map(({ file, name }) => `${name} in ${file}`)).toEqual([]);
  });

  test('what nothing takes back is asked first', () => {
    for (const [name, { asks }] of Object.entries(WITHOUT_UNDO)) {
      const files = changes.filter((one) => one.name === name);
      expect(files.length, `${name} is sent nowhere`).toBeGreaterThan(0);
      if (asks !== null) for (const { file } of files) expect(sources.get(file), `${name} in ${file}`).toMatch(asks);
    }
  });

  test('what is undone is not asked first as well: a question stands only where something is lost', () => {
    const asking = [...sources].filter(([, text]) => /<WorkAsked|tell\('imports\.sure/.test(text)).map(([file]) => file).sort();
    // Work in hand of a session or of a task would come into no record; a seal and a withdrawn import do not come back.
    expect(asking).toEqual(['renderer/handover/seal-leaf.tsx', 'renderer/settings/import/earlier-import.tsx', 'renderer/ui/plan/session-body.tsx', 'renderer/ui/plan/session-buttons.tsx']);
  });
});

describe('one word for one act', () => {
  const words = [...sources].filter(([file]) => file.startsWith(join('renderer', 'ui', 'words'))).map(([, text]) => text).join('\n');
  test('what goes away from a list is removed, whatever it is', () => {
    const labels = [...words.matchAll(/'[a-z-]+\.(?:remove|delete)': '([^']+)'/g)].map(([, label]) => label);
    expect(labels.length).toBeGreaterThan(3);
    expect(labels.filter((label) => label?.startsWith('Remove') !== true)).toEqual([]);
  });
});
