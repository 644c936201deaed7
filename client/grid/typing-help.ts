/** What a column knows of a text while it is typed. */
export interface TypingHelp {
  /** What the text would be read as; null when nobody can say. */
  read(text: string): Promise<TypedReading | null>;
  /** Names that a calculation may use, in the order they are offered. */
  names(): readonly OfferedName[];
}

export interface TypedReading {
  readonly ok: boolean;
  /** What the cell comes to, or what is wrong with it. */
  readonly text: string;
  /** The same in full, or what to do; may be empty. */
  readonly detail: string;
}

export interface OfferedName {
  readonly name: string;
  /** What it comes to, as the project prints it. */
  readonly value: string;
}
