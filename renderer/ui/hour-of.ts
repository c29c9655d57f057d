/** The time of day of an instant, where one is. @example hourOf('2026-12-05T20:40:00.000Z') //=> '20:40' */
export function hourOf(instant: string): string {
  return new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit' }).format(new Date(instant));
}
