import type { Push } from '../../shared-core/contract/push.ts';

interface Hearer {
  readonly hear: (push: Push) => void;
  readonly heardAgain: () => void;
}

/** The pushes of the loopback server. */
export interface PushStream {
  /** Hears them from now on; the answer stops it. */
  add(hearer: Hearer): () => void;
  /** Settled once the stream is open or has failed: nothing is asked before, so that no change after an answer is missed. */
  listening(): Promise<void>;
}

/**
 * One stream for the whole page, as a browser holds six connections to one server and lets all other questions wait. For the same reason a
 * page behind another tab gives its stream up when another page of ours opens one, and takes it up again when it comes to the front.
 */
export function pushStream(address: string): PushStream {
  const hearers = new Set<Hearer>();
  const others = new BroadcastChannel('streams');
  let source: EventSource | null = null;
  let heardBefore = false;
  let opened: Promise<void> = Promise.resolve();
  let settleOpened = (): void => undefined;

  const open = (): void => {
    others.postMessage('opens');
    opened = new Promise((resolve) => void (settleOpened = resolve));
    const settle = (again: boolean) => {
      if (again) hearers.forEach(({ heardAgain }) => heardAgain());
      heardBefore = true;
      settleOpened();
    };
    source = new EventSource(address);
    source.onopen = () => settle(heardBefore);
    source.onerror = () => settle(false);
    source.onmessage = ({ data }: MessageEvent<string>) => {
      const push = JSON.parse(data) as Push;
      hearers.forEach(({ hear }) => hear(push));
    };
  };
  const giveUp = (): void => {
    source?.close();
    source = null;
    settleOpened();
  };
  others.onmessage = () => {
    if (document.hidden) giveUp();
  };
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden && source === null && hearers.size > 0) open();
  });
  return {
    add(hearer) {
      hearers.add(hearer);
      if (source === null) open();
      return () => {
        hearers.delete(hearer);
        if (hearers.size === 0) giveUp();
      };
    },
    listening: () => opened,
  };
}
