import { protocol } from 'electron'
import { SCHEME } from './own-address.ts'

/** Before the app is ready: the scheme counts as an origin of its own, like https, and no other origin may read it. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    {
      scheme: SCHEME,
      privileges: {
        standard: true,
        secure: true,
        supportFetchAPI: true,
        stream: true,
        bypassCSP: false,
        corsEnabled: false,
        allowServiceWorkers: false,
        allowExtensions: false,
      },
    },
  ])
}
