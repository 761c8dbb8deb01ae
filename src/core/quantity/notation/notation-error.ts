import { CoreError } from '../../words/core-error.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'

/**
 * A written quantity that cannot be read. The message shows the text, where reading stopped and what to write.
 *
 * `at` counts UTF-16 code units from 0; it equals `text.length` when the text ends too early. The message
 * counts characters from 1.
 */
export class NotationError extends CoreError {
  override name = 'NotationError'
  readonly text: string
  readonly at: number
  /** What was expected there, or what to write instead. */
  readonly advice: CoreReason

  constructor(text: string, at: number, advice: CoreReason) {
    super(
      text.trim() === ''
        ? reason('notation.nothing-written', { advice })
        : reason('notation.stopped', { text, at, advice }),
    )
    this.text = text
    this.at = at
    this.advice = advice
  }
}
