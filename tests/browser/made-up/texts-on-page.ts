import type { Page } from 'playwright-core';

/** A text that the page shows or tells, with what it stands on. */
export interface TextOnPage {
  readonly text: string;
  readonly at: string;
}

/** All that a page tells: its text (but what stands there for a browser without scripts), names, descriptions, titles, placeholders, alternatives and options; what is typed into fields is somebody's own. */
export function textsOnPage(page: Page): Promise<readonly TextOnPage[]> {
  return page.evaluate(() => {
    const found: { text: string; at: string }[] = [];
    const name = (element: Element) => `${element.tagName.toLowerCase()}${element.id === '' ? '' : `#${element.id}`}`;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent !== null && !['SCRIPT', 'STYLE', 'TEXTAREA', 'NOSCRIPT'].includes(parent.tagName)) found.push({ text: node.textContent ?? '', at: name(parent) });
    }
    for (const attribute of ['aria-label', 'aria-description', 'aria-roledescription', 'aria-valuetext', 'title', 'placeholder', 'alt', 'label']) {
      for (const element of document.body.querySelectorAll(`[${attribute}]:not([aria-hidden=true])`)) found.push({ text: element.getAttribute(attribute) ?? '', at: `${name(element)} ${attribute}` });
    }
    found.push({ text: document.title, at: 'title' });
    // Locales are offered by their own way of writing a date.
    return found.filter((one) => /\p{L}/u.test(one.text) && !/^en-[A-Z]{2}: /.test(one.text));
  });
}

/** Whether the page stands sideways, and the texts that its boxes cut off; what ends in dots stands whole in its title, or beside what tells it whole. */
export function cutOff(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const root = document.documentElement;
    const sideways = root.scrollWidth > root.clientWidth ? [`the page is ${root.scrollWidth - root.clientWidth} px too wide`] : [];
    const cut = [...document.body.querySelectorAll<HTMLElement>('*')].filter((one) => {
      const { overflowX, clip, clipPath, position, textOverflow } = getComputedStyle(one);
      const isToldWhole = textOverflow === 'ellipsis' && (one.title === one.textContent || one.closest('[aria-hidden=true]') !== null);
      const isForEarsOnly = position === 'absolute' && (clip !== 'auto' || clipPath !== 'none');
      return (overflowX === 'hidden' || overflowX === 'clip') && !isForEarsOnly && !isToldWhole && one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1 && (one.textContent ?? '').trim() !== '';
    });
    return [...sideways, ...cut.map((one) => `${one.tagName.toLowerCase()}.${one.className.toString().split(' ')[0] ?? ''} cuts ${one.scrollWidth - one.clientWidth} px off “${(one.textContent ?? '').trim().slice(0, 60)}”`)];
  });
}
