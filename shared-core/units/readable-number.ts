const FIGURES = 3;

/** A number to as many figures as a person reads: three, and all of those before the point. @example readableNumber(22.1269) //=> '22.1' */
export function readableNumber(value: number): string {
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(FIGURES)));
}
