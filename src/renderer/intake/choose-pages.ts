import { create } from 'zustand'
import type { Refused } from '../../contract/reply.ts'
import type { RequestArguments } from '../../contract/requests.ts'
import type { ScanLook } from '../../contract/scan-look.ts'

/** Pages of a scan that a person chose, and what opens it; without `pages`: the first. */
export type ChosenPages = Pick<RequestArguments<'add-sheets'>, 'pages' | 'password'>

/** Takes the pages that were chosen; null when nobody refuses them. */
export type TakePages = (chosen: ChosenPages) => Promise<Refused | null>

interface Asked {
  look: ScanLook
  take: TakePages
  /** Called once: whether the pages were taken, or the scan was left. */
  done: (taken: boolean) => void
}

/** The scan whose pages a person is asked to choose from. */
export const usePagesAsked = create<{ asked: Asked | null }>(() => ({ asked: null }))

let turn: Promise<unknown> = Promise.resolve()

/** Lets a person choose pages of a scan, one scan after the other; whether they were taken. */
export function choosePages(look: ScanLook, take: TakePages): Promise<boolean> {
  const answer = turn.then(
    () =>
      new Promise<boolean>((resolve) => {
        const done = (taken: boolean): void => {
          usePagesAsked.setState({ asked: null })
          resolve(taken)
        }
        usePagesAsked.setState({ asked: { look, take, done } })
      }),
  )
  turn = answer
  return answer
}
