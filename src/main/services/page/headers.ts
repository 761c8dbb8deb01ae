/** What the page may load, and from where: its own host alone, and nothing that stands in the markup itself. */
const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')

/** Stands on everything a host answers with. */
export const PAGE_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': PAGE_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
}

/** `Cache-Control` of the page's own files and of messages. */
export const NEVER_KEPT = 'no-store'

/** `Cache-Control` of pictures: their address names the very scan that they are of. */
export const KEPT_FOR_GOOD = 'private, max-age=31536000, immutable'
