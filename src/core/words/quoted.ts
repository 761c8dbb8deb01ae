const SHOWN = 60

/** A value as a message shows it: in double quotes when it is text, on one line, and not longer than a person reads. */
export function quoted(value: unknown): string {
  const text = typeof value === 'string' && value.length > SHOWN ? `${value.slice(0, SHOWN)}…` : value
  const json = JSON.stringify(text) ?? String(value)
  return json.length > 2 * SHOWN ? `${json.slice(0, SHOWN)}…` : json
}
