import { useState } from 'react';

/** Which lane's field for a reading is open, and the letters that open one from anywhere in the yard. */
export interface LaneReadings {
  readonly open: string | null;
  readonly setOpen: (car: string | null) => void;
  /** The letter of a car's lane while the letters are shown, else null. */
  readonly letterOf: (car: string) => string | null;
  readonly lettersShown: boolean;
  /** Takes a key of the yard; answers whether it was for a reading. */
  readonly key: (key: string, lane: string | null) => boolean;
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/**
 * A reading goes into any lane with two keys before its figures at most: R in the lane, or R anywhere in the yard and then the letter that its
 * lane shows. With one car R is enough.
 */
export function useLaneReadings(cars: readonly string[]): LaneReadings {
  const [open, setOpen] = useState<string | null>(null);
  const [lettersShown, setLettersShown] = useState(false);
  const opened = (car: string | undefined): boolean => {
    setLettersShown(false);
    if (car !== undefined) setOpen(car);
    return car !== undefined;
  };
  return {
    open,
    setOpen,
    lettersShown,
    letterOf: (car) => (lettersShown ? (LETTERS[cars.indexOf(car)] ?? null) : null),
    key: (pressed, lane) => {
      const key = pressed.toLowerCase();
      if (lettersShown) return key.length === 1 ? opened(cars[LETTERS.indexOf(key)]) : key === 'escape' && !opened(undefined);
      if (key !== 'r') return false;
      if (lane !== null || cars.length < 2) return opened(lane ?? cars[0]);
      setLettersShown(true);
      return true;
    },
  };
}
