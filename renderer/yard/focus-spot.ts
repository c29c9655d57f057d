/** Gives the focus to the post at a day and place, else to the nearest later one, else to the last; nothing happens where there is none. */
export function focusSpot(within: ParentNode | null, spot: string): void {
  const posts = [...(within?.querySelectorAll<HTMLElement>('[data-spot]') ?? [])];
  (posts.find((one) => one.dataset['spot'] === spot) ?? posts.find((one) => (one.dataset['spot'] ?? '') > spot) ?? posts.at(-1))?.focus();
}

/** Where a session's post stands, as its mark in the page says it. */
export function spotOf({ day, place }: { readonly day: string; readonly place: string }): string {
  return `${day} ${place}`;
}
