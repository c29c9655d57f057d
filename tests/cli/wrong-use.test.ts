import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commands } from '../../electron/cli/all-commands.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { imprint } from '../store/imprint.ts';
import { jsonOf, runCommand } from './run-command.ts';

// Source: HEADLESS.md: exit status 0 done, 1 refused, 2 wrong use; --json prints one value on stdout and nothing else.
const names = commands.map(({ name }) => ({ name }));

describe('help', () => {
  test.each([{ words: ['--help'] }, { words: ['-h'] }, { words: ['help'] }])('$words lists every command', async ({ words }) => {
    const { status, out, said } = await runCommand(...words);
    expect([status, said]).toEqual([0, '']);
    for (const { name, does } of commands) expect(out).toMatch(new RegExp(`^ {2}${name} +${does.replace(/[();,]/g, '.')}$`, 'm'));
  });

  test('no command at all is wrong use, and says what there is', async () => {
    const { status, out, said } = await runCommand();
    expect([status, out]).toEqual([2, '']);
    expect(said).toContain('trunnion COMMAND');
  });

  test.each(names)('$name --help says what it does, how it is called, and every option', async ({ name }) => {
    const command = commands.find((one) => one.name === name);
    for (const words of [[name, '--help'], ['help', name], [name, '-h', '--json']]) {
      const { status, out, said } = await runCommand(...words);
      expect([status, said]).toEqual([0, '']);
      expect(out).toContain(command?.does);
      for (const option of ['household', 'sample', 'on', 'json', ...Object.keys(command?.options ?? {})]) expect(out, option).toContain(`--${option}`);
    }
  });
});

describe('a line of help that begins with the program', () => {
  test.each(commands)('is a call of it: $name', async ({ name }) => {
    const calls = (await runCommand(name, '--help')).out.split('\n').filter((line) => /^\s*trunnion\b/.test(line));
    expect(calls).not.toEqual([]);
    for (const call of calls) expect(call).toMatch(new RegExp(`^ {2}trunnion ${name}( |$)`));
  });
});

describe('wrong use', () => {
  test.each([
    { case: 'a command that is not there', words: ['sell'], why: 'There is no command "sell".' },
    { case: 'a part of the program\'s own', words: ['constructor'], why: 'There is no command "constructor".' },
    { case: 'a command in capitals', words: ['DUE'], why: 'There is no command "DUE".' },
    ...names.map(({ name }) => ({ case: `${name} with an unknown option`, words: [name, '--frobnicate'], why: "Unknown option '--frobnicate'" })),
    { case: 'the sample and another household at once', words: ['due', '--sample', '--household', '/nowhere'], why: "Options '--sample' and '--household' exclude each other" },
    { case: 'an option without its value', words: ['due', '--household'], why: "Option '--household" },
    { case: 'an empty value', words: ['due', '--household', ''], why: "Option '--household' is empty" },
    { case: 'a value for an option that has none', words: ['due', '--json=yes'], why: "Option '--json' does not take an argument" },
    { case: 'an option of another command', words: ['due', '--sure'], why: "Unknown option '--sure'" },
    { case: 'due with a word', words: ['due', 'pip'], why: 'due takes no further words.' },
    { case: 'enter without a file', words: ['enter'], why: 'enter takes one file' },
    { case: 'enter with two files', words: ['enter', 'a', 'b'], why: 'enter takes one file' },
    { case: 'reading without a value', words: ['reading', 'pip'], why: 'reading takes a car and a value.' },
    { case: 'reading with too many words', words: ['reading', 'pip', '1', '2'], why: 'reading takes a car and a value.' },
    { case: 'reading of no number', words: ['reading', 'pip', 'many'], why: '"many" is not a number.' },
    { case: 'reading with a comma', words: ['reading', 'pip', '38,250'], why: '"38,250" is not a number.' },
    { case: 'reading in base sixteen', words: ['reading', 'pip', '0x10'], why: '"0x10" is not a number.' },
    { case: 'reading without end', words: ['reading', 'pip', 'Infinity'], why: '"Infinity" is not a number.' },
    { case: 'reading of nothing', words: ['reading', 'pip', ' '], why: '" " is not a number.' },
    { case: 'reading in another unit', words: ['reading', 'pip', '1', '--unit', 'furlong'], why: '--unit is km or mi.' },
    { case: 'record without a file', words: ['record'], why: 'record takes one file' },
    { case: 'examine with a word', words: ['examine', 'it'], why: 'examine takes no further words.' },
    { case: 'backup with a word', words: ['backup', 'it'], why: 'backup takes no further words.' },
    { case: 'serve with a word', words: ['serve', 'it'], why: 'serve takes no further words.' },
    { case: 'pack without a car', words: ['pack', '--out', 'x'], why: 'pack takes one car.' },
    { case: 'pack without a folder', words: ['pack', 'pip'], why: 'pack needs --out' },
    { case: 'pack withholding what it cannot', words: ['pack', 'pip', '--out', 'x', '--withhold', 'odometer'], why: '"odometer" cannot be withheld.' },
    { case: 'check without a pack', words: ['check'], why: 'check takes one pack.' },
    { case: 'import without a file', words: ['import'], why: 'import takes one file.' },
    { case: 'order with a word', words: ['order', 'it'], why: 'order takes no further words.' },
    { case: 'order over a span that is none', words: ['order', '--horizon', 'soon'], why: '--horizon is a whole number of days.' },
    { case: 'forecast without a file', words: ['forecast', '--on', '2024-01-01', '--add-km', '1'], why: 'forecast takes one file.' },
    { case: 'forecast without a day', words: ['forecast', 'f', '--add-km', '1'], why: 'forecast needs --on and --add-km.' },
    { case: 'forecast without a distance', words: ['forecast', 'f', '--on', '2024-01-01'], why: 'forecast needs --on and --add-km.' },
    { case: 'forecast of a distance that is none', words: ['forecast', 'f', '--on', '2024-01-01', '--add-km', 'far'], why: '--add-km is a number of kilometres.' },
    { case: 'forecast with a thirteenth month', words: ['forecast', 'f', '--on', '2024-01-01', '--add-km', '1', '--laid-up', '12,13'], why: '--laid-up is a list of months, 1 to 12.' },
    { case: 'forecast with a declared distance that is none', words: ['forecast', 'f', '--on', '2024-01-01', '--add-km', '1', '--declared-km-a-year', 'much'], why: '--declared-km-a-year is a number.' },
    { case: 'backtest without a file', words: ['backtest'], why: 'backtest takes one file or more.' },
    { case: 'backtest with a spacing of nothing', words: ['backtest', 'f', '--spacing', '0'], why: '--spacing is a whole number of days.' },
    { case: 'backtest with half a day', words: ['backtest', 'f', '--spacing', '1.5'], why: '--spacing is a whole number of days.' },
  ])('$case: status 2, said, and nothing on standard output', async ({ words, why }) => {
    const folder = temporaryFolder();
    for (const more of [[], ['--json']]) {
      const { status, out, said } = await runCommand(...words, ...(words.includes('--household') ? [] : ['--household', join(folder, 'household')]), ...more);
      expect([status, out]).toEqual([2, '']);
      expect(said).toContain(why);
      expect(said).toContain('"trunnion help"');
    }
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('a folder that is no household', () => {
  test.each([
    { case: 'with other things in it', make: (folder: string) => writeFileSync(join(folder, 'letter.txt'), 'mine'), code: 'folder-not-empty' },
    { case: 'whose household file is something else', make: (folder: string) => writeFileSync(join(folder, 'household.sqlite'), 'something else'), code: 'not-a-household' },
    { case: 'that has lost its household file', make: (folder: string) => writeFileSync(join(folder, 'key'), 'a key'), code: 'store-missing' },
    { case: 'where a folder stands for the household file', make: (folder: string) => mkdirSync(join(folder, 'household.sqlite')), code: 'not-a-file' },
  ])('$case is refused by every command that needs one, and not touched', async ({ make, code }) => {
    const folder = temporaryFolder();
    make(folder);
    const before = imprint(folder);
    const file = join(temporaryFolder(), 'list.json');
    writeFileSync(file, '[]');
    for (const words of [['due'], ['examine'], ['backup'], ['reading', 'pip', '1'], ['enter', file], ['order'], ['pack', 'pip', '--out', folder]]) {
      const ran = await runCommand(...words, '--household', folder, '--json');
      expect(ran.status, words.join(' ')).toBe(1);
      expect(jsonOf(ran), words.join(' ')).toMatchObject({ refused: { code, text: expect.stringMatching(/\.$/) as string } });
      expect(ran.said).toContain(`(${code})`);
    }
    expect(imprint(folder)).toEqual(before);
  });

  test('a file in place of the folder is refused', async () => {
    const file = join(temporaryFolder(), 'file');
    writeFileSync(file, '');
    expect(jsonOf(await runCommand('due', '--household', file, '--json'))).toMatchObject({ refused: { code: 'not-a-folder' } });
    expect(jsonOf(await runCommand('due', '--household', join(file, 'below'), '--json'))).toMatchObject({ refused: { code: 'not-a-folder' } });
  });

  test('a day that does not exist is refused before anything is opened', async () => {
    const folder = temporaryFolder();
    const ran = await runCommand('due', '--household', join(folder, 'household'), '--on', '2026-02-30', '--json');
    expect(ran.status).toBe(1);
    expect(jsonOf(ran)).toMatchObject({ refused: { code: 'not-a-date' } });
    expect(readdirSync(folder)).toEqual([]);
  });
});
