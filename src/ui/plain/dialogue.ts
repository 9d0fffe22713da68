/** What the dialogue of lines talks through: a terminal, a pipe, a test. */

/** One line out; a question and the line that comes back, null at the end of input. */
export interface Dialogue {
  readonly say: (line: string) => void;
  readonly ask: (question: string) => Promise<string | null>;
  /** A text from the person's editor; missing where none can be started. */
  readonly edit?: () => Promise<EditedNote>;
}

/** What was written, empty when nothing was, or why it could not be. */
export type EditedNote = { readonly text: string } | { readonly problem: string };
