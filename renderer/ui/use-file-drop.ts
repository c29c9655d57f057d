import { useState, type DragEvent } from 'react';

/** A place where files may be dropped. */
export interface FileDrop {
  /** Files are held over it. */
  readonly over: boolean;
  readonly place: { readonly onDragOver: (event: DragEvent) => void; readonly onDragLeave: (event: DragEvent) => void; readonly onDrop: (event: DragEvent) => void };
}

/** Takes files that are dropped on a place, and nothing else that is; a place around it does not take them as well. */
export function useFileDrop(take: (files: readonly File[]) => void): FileDrop {
  const [over, setOver] = useState(false);
  return {
    over,
    place: {
      onDragOver: (event) => {
        if (!holdsFiles(event.dataTransfer)) return;
        takeAlone(event);
        setOver(true);
      },
      // Over a part of the place one is still over the place.
      onDragLeave: (event) => setOver(event.currentTarget.contains(event.relatedTarget as Node | null)),
      onDrop: (event) => {
        setOver(false);
        const files = [...event.dataTransfer.files];
        if (files.length === 0) return;
        takeAlone(event);
        take(files);
      },
    },
  };
}

function takeAlone(event: DragEvent): void {
  event.preventDefault();
  event.stopPropagation();
  event.dataTransfer.dropEffect = 'copy';
}

/** Whether what is held over the page are files, rather than text or a link. */
export function holdsFiles(transfer: DataTransfer | null): boolean {
  return transfer?.types.includes('Files') === true;
}
