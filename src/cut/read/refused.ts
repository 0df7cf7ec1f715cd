/** Raised inside the readers of drawings alone, to leave a file as soon as a part of it cannot be read as drawn. */
export class Refused extends Error {
  /** Line of the file, counted from 1; 0 where the fault lies in no one line. */
  readonly line: number;

  constructor(message: string, line = 0) {
    super(message);
    this.line = line;
  }
}
