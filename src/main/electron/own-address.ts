import { DESKTOP_ORIGIN } from '../../contract/message-bridge.ts'

/** The scheme that the window's page is served under. */
export const SCHEME = new URL(DESKTOP_ORIGIN).protocol.slice(0, -1)

const HOST = new URL(DESKTOP_ORIGIN).host

/** The address that the window shows. */
export const PAGE_ADDRESS = `${DESKTOP_ORIGIN}/`

/** The address when it is one of this program's own; null when it is anything else. */
export function ownAddress(address: string): URL | null {
  const url = URL.parse(address)
  if (url === null || url.protocol !== `${SCHEME}:` || url.host !== HOST) return null
  return url.username === '' && url.password === '' ? url : null
}

const PAGES = ['', '/', '/index.html']

/** Whether an address is that of the page itself, the only one that the window may show. */
export function isOwnPage(address: string): boolean {
  const url = ownAddress(address)
  return url !== null && PAGES.includes(url.pathname)
}

/** Whether the page may fetch from here: this program's own addresses, and what the page made itself. */
export function mayBeFetched(address: string): boolean {
  if (address.startsWith('data:')) return true
  if (address.startsWith('blob:')) return ownAddress(address.slice('blob:'.length)) !== null
  return ownAddress(address) !== null
}
