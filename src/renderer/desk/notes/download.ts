/** Hands a text to the person as a file, by the window's own way of keeping one. */
export function download(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The file is read after the click has ended.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

/** A title as a file name that every system takes. */
export function fileNameOf(title: string, ending: string): string {
  const plain = title
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80)
  return `${plain === '' ? 'job' : plain}-${ending}`
}
