const OPEN = /["[\]{}]/g
const STRING_END = /\\.|"/gs

/**
 * How deep the brackets of a JSON text are nested, counted without reading the text into objects. A text that is
 * no JSON has some depth too.
 */
export function jsonDepth(text: string): number {
  let depth = 0
  let deepest = 0
  OPEN.lastIndex = 0
  for (let found = OPEN.exec(text); found !== null; found = OPEN.exec(text)) {
    const [sign] = found
    if (sign === '"') {
      OPEN.lastIndex = afterString(text, OPEN.lastIndex)
    } else if (sign === '[' || sign === '{') {
      deepest = Math.max(deepest, ++depth)
    } else depth--
  }
  return deepest
}

function afterString(text: string, from: number): number {
  STRING_END.lastIndex = from
  for (let found = STRING_END.exec(text); found !== null; found = STRING_END.exec(text)) {
    if (found[0] === '"') return STRING_END.lastIndex
  }
  return text.length
}
