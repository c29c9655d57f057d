import { holdsFiles } from '../ui/use-file-drop.ts';

/** Files dropped beside a place that takes them do nothing: a browser would leave the page for them, and with it what was typed. */
export function refuseStrayDrops(page: Window): void {
  const refuse = (event: DragEvent): void => {
    if (event.defaultPrevented || !holdsFiles(event.dataTransfer)) return;
    event.preventDefault();
    if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'none';
  };
  page.addEventListener('dragover', refuse);
  page.addEventListener('drop', refuse);
}
