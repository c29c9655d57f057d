import { useEffect, useEffectEvent } from 'react';
import { loneKeysOn } from '../ui/keys/lone-keys.ts';
import type { LaneReadings } from './use-lane-readings.ts';
import type { SightControl } from './use-sight.ts';

interface YardKeys {
  readonly control: SightControl;
  readonly readings: LaneReadings;
}

/** The keys of the yard, wherever on its screen the focus is: never while one types, nor while a sheet stands over it. */
export function useYardKeys({ control, readings }: YardKeys): void {
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    const at = event.target instanceof HTMLElement ? event.target : document.body;
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isElsewhere(at) || (event.key.length === 1 && !loneKeysOn())) return;
    const lane = at.closest<HTMLElement>('[data-lane]')?.dataset['lane'] ?? '';
    if (readings.key(event.key, lane === '' ? null : lane) || takes(event, control, at)) event.preventDefault();
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => onKey(event);
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, []);
}

/** Where keys mean something else: fields, and what stands over the screen or beside it. */
function isElsewhere(at: HTMLElement): boolean {
  if (at.matches('input, textarea, select, [contenteditable]') && !at.matches('input[type=radio]')) return true;
  return document.querySelector('[role=dialog]') !== null || (at !== document.body && at.closest('main') === null);
}

function takes({ key, shiftKey }: KeyboardEvent, control: SightControl, at: HTMLElement): boolean {
  if (key === '+' || key === '=') control.step(1);
  else if (key === '-') control.step(-1);
  else if (key === 't' || key === 'T') control.toToday();
  else if (shiftKey && !at.matches('input') && (key === 'ArrowRight' || key === 'ArrowLeft')) control.moveOn(key === 'ArrowRight' ? 1 : -1);
  else return false;
  return true;
}
