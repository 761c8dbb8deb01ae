import { isAsFar } from '../picking/picks.ts'
import { type LongWork, type Notice, useBench } from './bench-store.ts'

let told = 0

/**
 * Tells a person something. What is told again becomes the newest, so that it is seen and heard again.
 * @param onceWritable what it says instead once the job can be written again
 * @returns what the notice goes by
 */
export function tell(tone: Notice['tone'], sentence: string, onceWritable?: string): number {
  const notice: Notice = { id: ++told, tone, sentence, ...(onceWritable !== undefined && { onceWritable }) }
  useBench.setState(({ notices }) => ({
    notices: [...notices.filter((one) => one.sentence !== sentence), notice],
  }))
  return notice.id
}

/** Tells a person something of what is in hand: with the next pick, or another tool, it no longer holds and goes by itself. */
export function tellOfPicks(sentence: string): void {
  const id = tell('told', sentence)
  const { picks } = useBench.getState()
  const end = useBench.subscribe((now) => {
    if (now.picks === picks || isAsFar(now.picks, picks)) return
    end()
    putAway(id)
  })
}

/** To be called when a job can be written again that could only be looked at. */
export function tellWritable(): void {
  for (const { id, onceWritable } of useBench.getState().notices) {
    if (onceWritable === undefined) continue
    putAway(id)
    tell('caution', onceWritable)
  }
}

export function putAway(id: number): void {
  useBench.setState(({ notices }) => ({ notices: notices.filter((notice) => notice.id !== id) }))
}

/** Shows work that takes a while, or how far it is. */
export function showWork(work: LongWork): void {
  useBench.setState((bench) => ({ work: [...bench.work.filter(({ id }) => id !== work.id), work] }))
}

export function endWork(id: string): void {
  useBench.setState((bench) => ({ work: bench.work.filter((work) => work.id !== id) }))
}
