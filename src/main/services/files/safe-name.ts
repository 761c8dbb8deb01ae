/** Bytes; systems take 255, and a number, a suffix or an extension must still find room. */
const LONGEST = 180

const LONGEST_EXTENSION = 8

/** Names that Windows keeps for devices, with any extension. */
const DEVICE = /^(?:con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i

function shortened(name: string, longest: number): string {
  let bytes = 0
  let kept = ''
  for (const letter of name) {
    bytes += Buffer.byteLength(letter)
    if (bytes > longest) return kept
    kept += letter
  }
  return kept
}

/**
 * A name for a file or folder that every system takes and that stays where it is put: no path, no control
 * characters, no hidden file, no device.
 * @param otherwise the name when nothing of `wanted` can be used
 */
export function safeName(wanted: string, otherwise: string): string {
  const plain = wanted
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\\/:*?"<>|]+/gu, '-')
    .replace(/\s+/gu, ' ')
    .replace(/^[. -]+/, '')
  const name = shortened(plain, LONGEST).replace(/[. ]+$/, '')
  if (name === '' || name === '-') return otherwise
  return DEVICE.test(name) ? `${otherwise} ${name}` : name
}

/** The last part of whatever a person's system calls a file; never a path. */
export function fileNameOf(given: string, otherwise: string): string {
  const last = given.split(/[/\\]/).at(-1) ?? ''
  const dot = last.lastIndexOf('.')
  // A long name loses its middle, not the extension that says what it is.
  const cut = dot > 0 && last.length - dot <= LONGEST_EXTENSION ? dot : last.length
  const extension = last.slice(cut)
  return safeName(
    shortened(last.slice(0, cut), LONGEST - Buffer.byteLength(extension)) + extension,
    otherwise,
  )
}
