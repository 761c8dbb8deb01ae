import { useBench } from './bench-store.ts'
import { theHost } from './the-host.ts'

/** Opens the locked scan of a sheet, so that it can be shown; why that failed, in a sentence, or an empty one. */
export async function unlock(sheet: string, password: string): Promise<string> {
  const job = useBench.getState().opened?.id
  const reply = await theHost().ask('unlock', { sheet, password })
  if (!reply.ok) return reply.sentence
  const { answer } = reply
  if (useBench.getState().opened?.id !== job) return ''
  useBench.setState(({ pictures }) => ({ pictures: { ...pictures, [sheet]: answer } }))
  return answer.progress.locked === true ? answer.progress.sentence : ''
}
