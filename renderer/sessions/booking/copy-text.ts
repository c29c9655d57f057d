/** Copies a text without asking for a permission, which the window gives to no page; whether it was copied. The focus stays where it was. */
export function copyText(text: string): boolean {
  const before = document.activeElement;
  const field = document.createElement('textarea');
  field.value = text;
  field.readOnly = true;
  document.body.append(field);
  field.select();
  const copied = document.execCommand('copy');
  field.remove();
  if (before instanceof HTMLElement) before.focus();
  return copied;
}
