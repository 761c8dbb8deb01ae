import { oneLine } from '../../services/log/one-line.ts'

const LONGEST = 200

/** Text from outside as a part of a line of the log. */
export const logText = (text: string): string => oneLine(text, LONGEST)

/** What a request asked for, without its query: that may hold the key. */
export const logPath = (url: string): string => logText(url.replace(/[?#].*$/s, ''))
