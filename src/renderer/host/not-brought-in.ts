/** What a person is told of a scan whose handing over they stopped. */
export const notBroughtIn = (name: string): DOMException =>
  new DOMException(`"${name}" was not brought in; nothing of it was kept.`, 'AbortError')
