/** Puts the focus on the row of an item: on the answer that stands, else on the first. */
export function focusRow(item: string): void {
  document.querySelector<HTMLElement>(`[data-answer-row="${CSS.escape(item)}"] [data-first=true]`)?.focus();
}

/**
 * Moves the focus along a row's buttons, or to the row above or below. False for a key that does neither, or where
 * there is nothing further on.
 */
export function focusBeside(toolbar: HTMLElement, key: string): boolean {
  const next = key === 'ArrowDown' || key === 'ArrowUp' ? inRow(toolbar, key) : inToolbar(toolbar, key);
  next?.focus();
  return next !== null;
}

function inToolbar(toolbar: HTMLElement, key: string): HTMLElement | null {
  const buttons = [...toolbar.querySelectorAll<HTMLElement>('button')];
  const at = buttons.findIndex((button) => button === document.activeElement);
  const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: buttons.length - 1 }[key];
  return to === undefined ? null : (buttons[to] ?? null);
}

/** The same answer of the row beside: who gives one answer to many goes straight down. */
function inRow(toolbar: HTMLElement, key: 'ArrowDown' | 'ArrowUp'): HTMLElement | null {
  const row = toolbar.closest('[data-answer-row]');
  const beside = key === 'ArrowDown' ? row?.nextElementSibling : row?.previousElementSibling;
  const at = [...toolbar.querySelectorAll('button')].findIndex((button) => button === document.activeElement);
  return beside?.querySelectorAll<HTMLElement>('[role=toolbar] button')[at] ?? null;
}
