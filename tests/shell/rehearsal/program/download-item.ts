import { EventEmitter } from 'node:events';

/** Something a page saves: what the program says about where, or that it is not to be. */
export class DownloadItem extends EventEmitter {
  cancelled = false;
  saveDialog: unknown = null;
  savePath = '';
  readonly #url: string;
  readonly #name: string;
  constructor(url: string, name: string) {
    super();
    this.#url = url;
    this.#name = name;
  }
  getURL(): string {
    return this.#url;
  }
  getURLChain(): string[] {
    return [this.#url];
  }
  getFilename(): string {
    return this.#name;
  }
  setSaveDialogOptions(options: unknown): void {
    this.saveDialog = options;
  }
  setSavePath(path: string): void {
    this.savePath = path;
  }
  cancel(): void {
    this.cancelled = true;
  }
}
