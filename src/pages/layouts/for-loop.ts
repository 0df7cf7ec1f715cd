import { Drop } from 'liquidjs';

/** What a layout may ask of the loop that it is in: `forloop.last` and its kin. */
export class ForLoop extends Drop {
  private at = 0;
  readonly length: number;
  readonly name: string;

  constructor(length: number, name: string) {
    super();
    this.length = length;
    this.name = name;
  }

  next() {
    this.at += 1;
  }

  index0() {
    return this.at;
  }

  index() {
    return this.at + 1;
  }

  first() {
    return this.at === 0;
  }

  last() {
    return this.at === this.length - 1;
  }

  rindex() {
    return this.length - this.at;
  }

  rindex0() {
    return this.length - this.at - 1;
  }
}
