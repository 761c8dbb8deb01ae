import type { RequestAnswer } from '../../contract/requests.ts'
import { useBench } from '../bench/bench-store.ts'
import { showSheet } from '../bench/choose.ts'
import { getPictures } from '../bench/get-pictures.ts'
import { endWork, showWork, tell } from '../bench/notices.ts'
import { takeCommitted } from '../bench/store-sync.ts'
import { theHost } from '../bench/the-host.ts'
import { type Signed, signed } from '../bench/who-is-at-work.ts'
import { takePages } from './take-pages.ts'

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

/** Has sheets made of a scan that was handed over, of the pages that a person chooses where there is a choice. */
async function bringInOne(upload: string, name: string, meant: Signed): Promise<readonly string[]> {
  let added: RequestAnswer<'add-sheets'> | undefined
  await takePages(upload, name, async (chosen) => {
    const reply = await theHost().ask('add-sheets', { upload, ...chosen, ...meant })
    if (!reply.ok) return reply
    added = reply.answer
    return null
  })
  if (added === undefined) return []
  takeCommitted(added)
  for (const remark of added.remarks) tell('told', remark)
  const [first] = added.sheets
  if (first === undefined) return []
  // The first of them is on the bench; not from under somebody who took up a tool meanwhile.
  if (useBench.getState().picks.tool.kind === 'look') await showSheet(first)
  else await getPictures(first)
  return added.sheets
}

/**
 * Brings scans into the job, each page that is wanted as a sheet of its own.
 * @returns the sheets that came of them
 */
export async function bringIn(files: readonly File[]): Promise<string[]> {
  const brought: string[] = []
  // Another job may be open by the time that a large scan has arrived.
  const meant = await signed()
  if (meant === null) return brought
  for (const file of files) {
    const upload = await sendScan(file)
    if (upload !== undefined) brought.push(...(await bringInOne(upload, file.name, meant)))
  }
  return brought
}
