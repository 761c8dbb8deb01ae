import { useBench } from './bench-store.ts'
import { showSheet } from './choose.ts'
import { signed } from './edits.ts'
import { getPictures } from './get-pictures.ts'
import { endWork, showWork, tell } from './notices.ts'
import { takeKept } from './take-in.ts'
import { ask, theHost } from './the-host.ts'

let sent = 0

/** The same for a file that is chosen twice. */
export const fileIdentity = ({ name, size, lastModified }: File): string => `${name} ${size} ${lastModified}`

/** Hands one scan over to the host, and shows how far it is; undefined when it was refused or given up. */
export async function sendScan(file: File): Promise<string | undefined> {
  const id = `scan ${++sent}`
  const abort = new AbortController()
  const show = (done: number): void =>
    showWork({ id, name: `Bringing in ${file.name}`, done, cancel: () => abort.abort() })
  show(0)
  try {
    return await theHost().sendScan(file, show, abort.signal)
  } catch (error) {
    if (abort.signal.aborted) tell('told', `${file.name} was not brought in; nothing has changed.`)
    else tell('failed', error instanceof Error ? error.message : String(error))
    return undefined
  } finally {
    endWork(id)
  }
}

/**
 * Brings scans into the job, each as a sheet of its own, and puts the last one on the bench; not from under somebody
 * who took up a tool meanwhile.
 */
export async function bringIn(files: readonly File[]): Promise<void> {
  // Another job may be open by the time that a large scan has arrived.
  const meant = signed()
  for (const file of files) {
    const upload = await sendScan(file)
    if (upload === undefined) continue
    const added = await ask('add-sheet', { upload, ...meant })
    if (added === undefined) continue
    takeKept(added)
    for (const remark of added.remarks) tell('told', remark)
    if (useBench.getState().picks.tool.kind === 'look') await showSheet(added.sheet)
    else await getPictures(added.sheet)
  }
}
