/** An error whose message is a sentence for a person: what is wrong, where, and what to do now. */
export class ScantlingError extends Error {
  override name = 'ScantlingError'
}
