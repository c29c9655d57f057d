import type { MessageValues } from '../../shared-core/result/result.ts';
import type { WINDOW_WORDS } from '../../shared-core/result/words/en-window.ts';
import { say } from '../../shared-core/result/words/say.ts';

/** A name among the words of the window's menu and boxes. */
export type WindowWord = keyof typeof WINDOW_WORDS;

/** The words of a menu entry or a box. @example windowWords('menu-quit') //=> 'Quit' */
export function windowWords(key: WindowWord, values: MessageValues = {}): string {
  return say({ key, values });
}
