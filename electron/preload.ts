import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron';

/** The names of the contract's operations, written in when this file is bundled. */
declare const OPERATION_NAMES: readonly string[];

/** One function for each operation: the page can ask for nothing that has no name here. */
const operations = Object.fromEntries(OPERATION_NAMES.map((name) => [name, (request: unknown): Promise<unknown> => ipcRenderer.invoke(`operation:${name}`, request)]));

/** Hears the host; the page gets what was told, never the event with its way back. */
function onPush(listener: (push: unknown) => void): () => void {
  const hear = (_event: IpcRendererEvent, push: unknown): void => listener(push);
  ipcRenderer.on('push', hear);
  return () => void ipcRenderer.off('push', hear);
}

contextBridge.exposeInMainWorld('trunnion', { operations, onPush });
