import { Notification } from 'electron';
import type { Told } from '../host/tell-reminders.ts';

const AN_HOUR = 3_600_000;

/** What reminding needs of the program around it. */
export interface Reminding {
  /** What is to be told now, once; null where nothing is. */
  readonly next: () => Told | null;
  /** It was clicked. */
  readonly onClick: () => void;
  /** Something went wrong: reminding never ends the program. */
  readonly onFault: (error: unknown) => void;
}

/** Shows what is to be told at once, and looks again every hour, so that a new day is noticed while the window stays open. Answers what ends it. */
export function remindDaily({ next, onClick, onFault }: Reminding): () => void {
  // One that nobody holds is taken away when memory is tidied up, and a click on it is lost.
  let shown: Notification | null = null;
  const look = () => {
    try {
      if (Notification.isSupported()) shown = show(next(), onClick) ?? shown;
    } catch (error) {
      onFault(error);
    }
  };
  look();
  const timer = setInterval(look, AN_HOUR);
  return () => {
    clearInterval(timer);
    shown = null;
  };
}

function show(told: Told | null, onClick: () => void): Notification | null {
  if (told === null) return null;
  const notification = new Notification({ title: told.title, body: told.body });
  notification.on('click', onClick);
  notification.show();
  return notification;
}
