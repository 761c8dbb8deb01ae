/**
 * Puts a text on the clipboard, while a press or key is being answered; false where the browser does not let it. By the
 * event of copying and not by the clipboard itself, which a page in the desktop window is not given.
 */
export function copyText(text: string): boolean {
  let put = false
  const copying = (event: ClipboardEvent): void => {
    if (event.clipboardData === null) return
    event.clipboardData.setData('text/plain', text)
    event.preventDefault()
    event.stopImmediatePropagation()
    put = true
  }
  document.addEventListener('copy', copying, { capture: true })
  try {
    return document.execCommand('copy') && put
  } finally {
    document.removeEventListener('copy', copying, { capture: true })
  }
}
