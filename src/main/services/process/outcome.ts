/** What came of an order: done, refused in words by a process that lives on, or not, because the process had to end. */
export type Outcome<Answer, Refusal> =
  | { end: 'answer'; answer: Answer }
  | { end: 'refusal'; refusal: Refusal }
  /** It ended by itself. how: its signal or exit code; null: it could not be started */
  | { end: 'death'; how: string | null }
  /** It used more memory than it may. */
  | { end: 'memory' }
  /** It took longer than it may. */
  | { end: 'late'; seconds: number }
