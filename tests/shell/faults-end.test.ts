import { beforeEach, describe, expect, test, vi } from 'vitest';
import { faultEnds, hearFaults } from '../../electron/shell/end-on-fault.ts';
import { describeFault } from '../../electron/shell/note-fault.ts';
import { standIn } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);
beforeEach(() => void (standIn.dialog.showErrorBox.calls.length = 0));

describe('the note of a fault', () => {
  test('says its sort, its code and its places, never its words or folders', () => {
    const error = Object.assign(new TypeError('Pip, 38250 mi\n    at the garage of Ours'), { code: 'ENOENT' });
    error.stack = `TypeError: ${error.message}\n    at show (file:///home/me/My cars/dist/main/main.js:10:3)\n    at C:\\Users\\me\\main.js:4:1\n    at async Promise.all (index 0)`;
    expect(describeFault(error)).toBe('TypeError ENOENT\n  at show (main.js:10:3)\n  at main.js:4:1\n  at async Promise.all (index 0)');
  });

  test('of what is no error says only what it is', () => {
    expect([describeFault('Pip'), describeFault({ car: 'Pip' }), describeFault(undefined)]).toEqual(['a thrown string', 'a thrown object', 'a thrown undefined']);
  });

  test.each([new Error('Pip'), Object.assign(new Error('Pip'), { code: 'for Pip' }), Object.assign(new Error('Pip'), { stack: 'Error: other words\n    at a (/home/me/x.js:1:1)' })])('leaves the words out of %o', (error) => {
    expect(describeFault(error)).toMatch(/^Error\n {2}at /);
    expect(describeFault(error)).not.toMatch(/Pip|home|other words/);
  });
});

describe('a fault that nobody caught', () => {
  test('is noted, said once in a sentence, and ends the program with status 1', () => {
    const written = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const endWith = vi.fn(() => Promise.resolve());
    const onFault = faultEnds(endWith);
    onFault(new Error('Pip'));
    onFault(new Error('and another'));
    const notes = written.mock.calls.map(([text]) => String(text));
    written.mockRestore();
    expect(notes.map((note) => note.split('\n')[0])).toEqual(['Error', 'Error']);
    expect(standIn.dialog.showErrorBox.calls).toEqual([['Trunnion', expect.stringMatching(/^Something went wrong .*\.$/) as string]]);
    expect(endWith.mock.calls).toEqual([[1]]);
  });

  test('is heard whether it was thrown or a promise failed', () => {
    const onFault = vi.fn();
    const heard = vi.spyOn(process, 'on').mockReturnValue(process);
    hearFaults(onFault);
    expect(heard.mock.calls).toEqual([['uncaughtException', onFault], ['unhandledRejection', onFault]]);
    heard.mockRestore();
  });
});
