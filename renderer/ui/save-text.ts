/** Offers a text as a file to be saved. A table gets the mark by which spreadsheets know its encoding. */
export function saveText(name: string, text: string, type: 'text/csv' | 'text/plain' | 'text/calendar'): void {
  const blob = new Blob([type === 'text/csv' ? `\ufeff${text}` : text], { type: `${type};charset=utf-8` });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
