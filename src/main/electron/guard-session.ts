import type { Session } from 'electron'
import type { Log } from './log.ts'
import { mayBeFetched } from './own-address.ts'

/** Denies a page everything that it does not need: permissions, devices, capture, downloads but of what it made itself, any other origin. */
export function guardSession(session: Session, log: Log): void {
  session.setPermissionRequestHandler((_contents, permission, decide) => {
    log('refused a permission', permission)
    decide(false)
  })
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.setDisplayMediaRequestHandler((_request, decide) => {
    log('refused a permission', 'display-capture')
    decide(null)
  })
  session.setSpellCheckerEnabled(false)
  session.webRequest.onBeforeRequest((details, decide) => {
    const cancel = !mayBeFetched(details.url)
    if (cancel) log('refused to fetch', details.url)
    decide({ cancel })
  })
  session.on('will-download', (event, item) => {
    // What the page made itself (notes to hand on) goes where the person says, in the system's own dialog.
    if (item.getURL().startsWith('blob:') && mayBeFetched(item.getURL())) return
    event.preventDefault()
    log('refused a download', item.getURL())
  })
}
