import { openSide, type Side } from './between-worlds.ts';

/** Written in when this file is bundled: the names of the two sides. */
declare const PAGE_SIDE: string;
declare const PRELOAD_SIDE: string;

/** In the page's own world: puts what the preload script exposes into the window, where nothing can write over it. */
const side: Side = openSide(PAGE_SIDE, PRELOAD_SIDE, (said) => {
  if (said.kind === 'expose') Object.defineProperty(window, said.name, { value: side.take(said.value), enumerable: true });
});
side.say({ kind: 'here' });
