import type { Catalogue } from '../../../core/words/reason.ts'

/** What a host says of what came to it that is no request of its own window, and of its own parts. */
export const HOST_WORDS = {
  // Messages of the desktop window
  'message.foreign': () => 'Only the page of the workbench may ask it for anything.',
  'message.not-understood': () => 'The message could not be understood; nothing was done.',
  'message.too-large': (p: { most: number }) =>
    `The message is larger than the workbench takes (${p.most / 1024 ** 2} MB) or has no name; nothing was done.`,

  // What the desktop window's page fetches
  'page.foreign': () => 'Only the page of the workbench is answered, at its own address.',
  'page.takes-nothing': () => 'Nothing can be sent to this address.',
  'page.nothing-there': () => 'There is nothing at this address.',
  'page.scan-by-post': () => 'A scan is sent by POST.',
  'page.fault': () => 'The workbench could not answer because of a fault in the program.',

  // Scans that arrive in pieces
  'pieces.not-understood': () => 'The scan arrived in a form that is not understood: hand it over again.',
  'pieces.lost': () => 'Part of the scan was lost on its way: hand it over again.',
  'pieces.broken-off': () => 'The scan was not handed over whole.',
  'pieces.too-many': (p: { most: number }) =>
    `More than ${p.most} scans arrive at once: hand this one over again later.`,

  // Requests to the local host
  'local.another-address': (p: { authority: string }) =>
    `This workbench answers at http://${p.authority} only.`,
  'local.no-path': () => 'A request to the workbench begins with a path.',
  'local.method': () => 'The workbench takes GET and POST only.',
  'local.another-page': () =>
    'This request came from a page that is not the workbench, and was refused. To open the workbench, put its address into the address bar of a browser.',
  'local.not-let-in': () =>
    'This workbench belongs to whoever opened it. Open it with "scantling open", and use the address that it gives.',
  'local.key-used': () =>
    'This address has been used already: it lets one browser in, once. Go on in the window that it opened, or end that workbench and open it again with "scantling open".',
  'local.nothing-there': () => 'There is nothing at this address of the workbench.',
  'local.no-picture': () => 'There is no such picture, or not yet.',
  'local.unreadable-address': () => "This address can't be read.",
  'local.address-too-long': () => 'There is nothing at this address.',
  'local.unreadable': () => "This message can't be read, so nothing was done.",
  'local.too-large': () => 'This message is larger than the workbench takes, so nothing was done.',
  'local.content-type': () =>
    'The workbench takes messages as application/json and scans as application/octet-stream.',
  'local.scan-without-name': () => 'A scan comes with the name of its file.',
  'local.scan-broken-off': () => 'The scan broke off on its way, and nothing of it was kept.',
  'local.fault': () =>
    'The workbench failed at this by a fault of its own. What was acknowledged before is kept; try again.',

  // The program itself
  'program.incomplete': () => 'Part of the program is missing (its samples folder): install Scantling again.',
  'program.window-failed': (p: { how: string }) =>
    `The desktop window ended by a fault (${p.how}); every edit that was shown as saved is in the job folder.`,
} as const satisfies Catalogue
