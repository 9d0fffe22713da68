/** What was given looked right and turned out not to be when it was worked with: no mistake of the program's. */
export class Unworkable extends Error {
  /** What to do next. */
  readonly fix: string;

  /** `words` say what is wrong with what. */
  constructor(words: string, fix: string) {
    super(words);
    this.fix = fix;
  }
}
