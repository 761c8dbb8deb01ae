/**
 * A message to stand by itself: a capital at its start, a stop at its end. What has a dot, a slash, an underscore or a
 * digit in it is a name and keeps its case.
 */
export function asSentence(message: string): string {
  const text = message.trim().replace(/^[a-z](?=[a-z]*[ ,])/, (letter) => letter.toUpperCase())
  return /[.!?]$/.test(text) ? text : `${text}.`
}
