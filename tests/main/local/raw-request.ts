import { request } from 'node:http'
import { connect } from 'node:net'

export interface Answer {
  status: number
  headers: Record<string, string | string[] | undefined>
  body: string
}

export interface Raw {
  method?: string
  path?: string
  headers?: Record<string, string | string[]>
  /** Pieces are sent one after the other, in chunks when no length is declared. */
  body?: string | Buffer | readonly Buffer[]
}

/** A request with exactly these headers; none is added, Host neither. */
export function rawRequest(
  port: number,
  { method = 'GET', path = '/', headers = {}, body }: Raw,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, method, path, headers, setHost: false, agent: false })
    let answered = false
    sent.on('response', (response) => {
      answered = true
      let text = ''
      response.setEncoding('utf8')
      response.on('data', (data: string) => {
        text += data
      })
      const done = () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text })
      response.on('end', done)
      response.on('error', done)
    })
    // A host that refuses closes the connection, although not all of the message has been sent.
    sent.on('error', (error) => (answered ? undefined : reject(error)))
    if (body !== undefined && typeof body !== 'string' && !Buffer.isBuffer(body)) {
      for (const piece of body) sent.write(piece)
      sent.end()
    } else sent.end(body)
  })
}

/** Bytes as they are, and all that comes back until the connection is closed. */
export function rawText(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let answer = ''
    const socket = connect(port, '127.0.0.1', () => socket.write(text))
    socket.setEncoding('utf8').on('data', (data: string) => {
      answer += data
      if (answer.includes('\r\n\r\n')) socket.end()
    })
    socket.on('error', () => undefined)
    socket.on('close', () => resolve(answer))
  })
}
