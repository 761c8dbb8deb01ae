import type { ScanLook } from '../../contract/scan-look.ts'
import { endWork, showWork, tell } from '../bench/notices.ts'
import { ask, theHost } from '../bench/the-host.ts'
import { choosePages, type TakePages } from './choose-pages.ts'
import { isPlain } from './page-words.ts'

/** taken: as was chosen. left: a person did not want it. refused: it can't be taken, and they have been told why. */
export type Taken = 'taken' | 'left' | 'refused'

async function lookInto(upload: string, name: string): Promise<ScanLook | undefined> {
  const id = `look ${upload}`
  showWork({ id, name: `Looking into ${name}`, done: 0 })
  return await ask('look-into', { upload }).finally(() => endWork(id))
}

/**
 * Looks into a scan that was handed over and takes it: straight in when it has one plain page, else the pages that a
 * person chooses. What is not taken is given back.
 */
export async function takePages(upload: string, name: string, take: TakePages): Promise<Taken> {
  const look = await lookInto(upload, name)
  const taken = look === undefined ? 'refused' : await takeLooked(look, take)
  if (taken !== 'taken') await theHost().ask('drop-upload', { upload })
  return taken
}

async function takeLooked(look: ScanLook, take: TakePages): Promise<Taken> {
  if (!isPlain(look)) return (await choosePages(look, take)) ? 'taken' : 'left'
  const refused = await take({})
  if (refused === null) return 'taken'
  tell('failed', refused.sentence)
  return 'refused'
}
