import type { AnyReason } from './reason.ts'

/**
 * An error that a person can do something about. What it is stands in `reason`; the message is that in words: what is
 * wrong, where, and what to do now.
 */
export class ScantlingError extends Error {
  override name = 'ScantlingError'
  readonly reason: AnyReason

  /** @param words of the reason, from the catalogue of the layer that it comes from */
  constructor(reason: AnyReason, words: string) {
    super(words)
    this.reason = reason
  }
}
