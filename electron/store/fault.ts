/** Something that is not as it should be, and where. */
export interface Fault {
  readonly where: string;
  readonly what: string;
}
