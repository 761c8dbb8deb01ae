const MOST = 200

/** Text from outside as a part of one line of the log: no control characters, of bounded length. */
export function logText(text: string): string {
  const plain = text.slice(0, 4 * MOST).replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ')
  return plain.length <= MOST ? plain : `${plain.slice(0, MOST)}…`
}

/** What a request asked for, without its query: that may hold the key. */
export const logPath = (url: string): string => logText(url.replace(/[?#].*$/s, ''))
