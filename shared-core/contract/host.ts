import type { Result } from '../result/result.ts';
import type { Push } from './push.ts';

/**
 * What serves the contract: the same object behind the window, the loopback server and the command line.
 * `call` parses the request, runs the operation by its name and parses the reply; it never throws for a refusal.
 */
export interface Host {
  call(operation: string, request: unknown): Promise<Result<unknown>>;
  onPush(listener: (push: Push) => void): () => void;
  close(): Promise<void>;
}
