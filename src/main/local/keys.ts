import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'

const KEY_BYTES = 32

const newKey = (): string => randomBytes(KEY_BYTES).toString('base64url')

/** Digests are of one length, so that comparing them takes the same time whatever was given. */
const digest = (text: string): Buffer => createHash('sha256').update(text).digest()

const same = (a: string, b: string): boolean => timingSafeEqual(digest(a), digest(b))

/** Each cookie of this name in a Cookie header, RFC 6265 §5.4. */
function cookies(header: string | undefined, name: string): string[] {
  return (header ?? '').split(';').flatMap((pair) => {
    const [key = '', ...value] = pair.split('=')
    return key.trim() === name ? [value.join('=').trim()] : []
  })
}

/**
 * Who may come in. An address with a key lets one browser in, once, because addresses stand in the list of
 * processes and in histories; from then on the browser shows a cookie that was never in an address.
 */
export class Keys {
  readonly #cookie = newKey()
  readonly #name: string
  #unused: string[] = []

  /** @param port in the name of the cookie, for browsers send cookies to every port of a host */
  constructor(port: number) {
    this.#name = `scantling-${port}`
  }

  /** A key that has not been used. */
  issue(): string {
    const key = newKey()
    this.#unused.push(key)
    return key
  }

  /** The Set-Cookie header for whoever gives an unused key; the key is used then. Undefined for any other. */
  redeem(key: string): string | undefined {
    const left = this.#unused.filter((unused) => !same(unused, key))
    if (left.length === this.#unused.length) return undefined
    this.#unused = left
    return `${this.#name}=${this.#cookie}; Path=/; HttpOnly; SameSite=Strict`
  }

  /** @param header the request's Cookie header */
  isKnown(header: string | undefined): boolean {
    return cookies(header, this.#name).some((value) => same(value, this.#cookie))
  }
}
