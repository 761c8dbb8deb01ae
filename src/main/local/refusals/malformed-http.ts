import type { Socket } from 'node:net'
import { logText } from './log-parts.ts'

/** RFC 6585 §5. */
const HEADERS_TOO_LARGE = 'HPE_HEADER_OVERFLOW'

/** A window that goes away in the middle of something: no refusal, and what was under way tells of it itself. */
const GONE = new Set(['ECONNRESET', 'EPIPE', 'HPE_INVALID_EOF_STATE'])

/** Answers what is no HTTP, or has headers beyond measure, and logs it in one line. */
export class MalformedHttp {
  readonly #log: (line: string) => void
  readonly #refused = new WeakSet<Socket>()

  constructor(log: (line: string) => void) {
    this.#log = log
  }

  refuse(error: Error & { code?: string }, socket: Socket): void {
    if (GONE.has(error.code ?? '') || this.wasRefused(socket)) {
      socket.destroy()
      return
    }
    this.#refused.add(socket)
    this.#log(`refused a request that is no HTTP: ${logText(error.code ?? error.message)}`)
    const status =
      error.code === HEADERS_TOO_LARGE ? '431 Request Header Fields Too Large' : '400 Bad Request'
    if (socket.writable) socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`)
    else socket.destroy()
  }

  /** Whether a line tells of this connection already: a request that was under way on it fails with it. */
  wasRefused(socket: Socket): boolean {
    return this.#refused.has(socket)
  }
}
