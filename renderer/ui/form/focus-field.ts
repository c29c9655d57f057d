/** What may be typed into, chosen or pressed with the Tab key alone. */
const CONTROL = 'input:not([tabindex="-1"]), select, textarea, button';

/**
 * Puts the focus on the field a refusal names by its path: the field itself, else one within the nearest group that holds it.
 * `idOf` gives the id under which a path stands in the form.
 */
export function focusField(path: string | null, idOf: (path: string) => string): void {
  for (let rest = path ?? ''; rest !== ''; rest = rest.slice(0, Math.max(0, rest.lastIndexOf('.')))) {
    const field = document.getElementById(idOf(rest));
    if (field === null) continue;
    // What is folded away is unfolded, so that it can be seen.
    field.closest('details')?.setAttribute('open', '');
    return (field.matches('fieldset') ? controlIn(field) : field).focus();
  }
}

/** A group is nothing to type into: the field in it that is at fault, else its first one. */
function controlIn(group: HTMLElement): HTMLElement {
  return group.querySelector<HTMLElement>('[aria-invalid="true"]') ?? group.querySelector<HTMLElement>(CONTROL) ?? group;
}
