import { dayNumber, localDate, type LocalDate } from '../calendar/local-date.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LARGEST_METRES } from '../units/distance.ts';

/** One line of a bare odometer log; `day` counts from 1970-01-01, `line` from 1. */
export interface LogReading {
  readonly line: number;
  readonly date: LocalDate;
  readonly day: number;
  readonly km: number;
}

/** Enough for a reading a day over every date taken. */
const MOST_LINES = 110_000;
const HEADER = /^"?date"?\s*,\s*"?km"?$/i;
const KILOMETRES = /^\d{1,8}(\.\d{1,6})?$/;
const LARGEST_KM = LARGEST_METRES / 1000;

/**
 * Reads `date,km` lines (a first line `date,km` may be there; empty lines are skipped), in order of day, then of distance.
 * The first line that cannot be read is refused by its number: nothing is guessed.
 *
 * @example parseOdometerLog('date,km\n2024-01-08,61500') //=> ok [{ line: 2, date: '2024-01-08', day: 19730, km: 61500 }]
 */
export function parseOdometerLog(text: string): Result<readonly LogReading[]> {
  // A byte order mark needs no care: trim() takes it for a space.
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES) return refuse('log-too-long', { most: MOST_LINES });
  const first = lines.findIndex((line) => line.trim() !== '');
  const readings: LogReading[] = [];
  for (const [at, line] of lines.entries()) {
    if (line.trim() === '' || (at === first && HEADER.test(line.trim()))) continue;
    const reading = parseLine(line, at + 1);
    if (!reading.ok) return reading;
    readings.push(reading.value);
  }
  if (readings.length === 0) return refuse('log-empty');
  return ok(readings.sort((a, b) => a.day - b.day || a.km - b.km));
}

function parseLine(text: string, line: number): Result<LogReading> {
  const cells = text.split(',').map(withoutQuotes);
  const [dateText, kmText] = cells;
  if (cells.length !== 2 || dateText === undefined || kmText === undefined) return refuse('log-line-columns', { line, columns: cells.length });
  const date = localDate(dateText);
  if (!date.ok) return refuse('log-line-date', { line, value: shown(dateText) });
  const km = Number(kmText);
  if (!KILOMETRES.test(kmText) || km > LARGEST_KM) return refuse('log-line-km', { line, value: shown(kmText) });
  return ok({ line, date: date.value, day: dayNumber(date.value), km });
}

function withoutQuotes(cell: string): string {
  return cell.trim().replace(/^"([^"]*)"$/, '$1').trim();
}

/** A cell as it may be repeated in a sentence: short, without control characters. */
function shown(cell: string): string {
  return cell.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '?').slice(0, 40);
}
