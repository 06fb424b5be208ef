// What a command writes to and asks of the world; tests hand in their own.

export interface Streams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly readInput: () => string;
  /** Today, as 2026-11-25. */
  readonly today: string;
  readonly columns: number | undefined;
  /** Whether the output may carry colour. */
  readonly colour: boolean;
}
