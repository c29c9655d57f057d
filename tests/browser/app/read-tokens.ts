import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { PROJECT } from '../../../electron/start/bundle.ts';

const RENDERER = path.join(PROJECT, 'renderer');

/** The tokens of each theme, as the style sheet has them: the later block over the earlier. */
export function readThemes(): Readonly<Record<string, Readonly<Record<string, string>>>> {
  const blocks = blocksOf(readFileSync(path.join(RENDERER, 'app', 'tokens.css'), 'utf8'));
  const of = (...wanted: string[]) => Object.assign({}, ...blocks.filter(({ selector }) => selector.some((one) => wanted.includes(one))).map(({ tokens }) => tokens)) as Record<string, string>;
  const scheme = (name: string) => `:root[data-mantine-color-scheme='${name}']`;
  const contrast = (name: string) => `:root[data-contrast='more'][data-mantine-color-scheme='${name}']`;
  return { light: of(scheme('light')), dark: of(scheme('dark')), 'contrast-light': of(contrast('light')), 'contrast-dark': of(contrast('dark')) };
}

/** What the last block, for colours of the person's own, gives each token. */
export function readForced(): Readonly<Record<string, string>> {
  const css = readFileSync(path.join(RENDERER, 'app', 'tokens.css'), 'utf8');
  return blocksOf(css.slice(css.indexOf('forced-colors: active')))[0]?.tokens ?? {};
}

/** Every rule of the style sheets in which words of one token stand on the ground of another. */
export function pairsInUse(): readonly { readonly file: string; readonly words: string; readonly ground: string }[] {
  const files = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.css'));
  return files.flatMap((file) =>
    [...readFileSync(path.join(RENDERER, file), 'utf8').matchAll(/\{([^{}]*)\}/g)].flatMap(([, body = '']) => {
      const words = /(?:^|\s)color: var\(--([a-z-]+)\)/.exec(body)?.[1];
      const ground = /background(?:-color)?: var\(--([a-z-]+)\)/.exec(body)?.[1];
      return words === undefined || ground === undefined ? [] : [{ file, words, ground }];
    }));
}

function blocksOf(css: string): { readonly selector: readonly string[]; readonly tokens: Readonly<Record<string, string>> }[] {
  return [...css.replaceAll(/\/\*.*?\*\//gs, '').matchAll(/([^{}]+)\{([^{}]*)\}/g)].map(([, selector = '', body = '']) => ({
    selector: selector.split(',').map((one) => one.trim()),
    tokens: Object.fromEntries([...body.matchAll(/--([a-z-]+): ([^;]+);/g)].map(([, name = '', value = '']) => [name, value])),
  }));
}
