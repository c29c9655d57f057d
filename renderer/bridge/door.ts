import type { Push } from '../../shared-core/contract/push.ts';
import type { Result } from '../../shared-core/result/result.ts';

/** The way from the page to the host: the window's own functions, or the loopback server. */
export interface Door {
  /** Asks for one operation by its name. Never rejects: that nobody answers is a refusal too. */
  call(operation: string, request: unknown): Promise<Result<unknown>>;
  /**
   * Hears what the host tells by itself; `heardAgain` is called after a time in which something may have been missed.
   * The answer stops it.
   */
  onPush(listener: (push: Push) => void, heardAgain: () => void): () => void;
}
