import { personOf } from '../../core/job/edits/edit.ts'
import { useBench } from './bench-store.ts'
import { personName } from './signature.ts'
import { takeBench } from './store-sync.ts'
import { ask } from './the-host.ts'

/** Who an edit is by, and the job that it is meant for. */
export interface Signed {
  by: string
  job?: string
}

let waiting: ((isNamed: boolean) => void)[] = []

/** Asks who is at work, where somebody wants to say it or it has to be known. */
export const askWho = (): void => useBench.setState({ asksWho: true })

/** Names who makes the edits from now on, in this job and in others, also when the window is opened again. @param who the id of a person of the job, or a name */
export async function workAs(who: string): Promise<void> {
  const { opened } = useBench.getState()
  const person = who.trim()
  useBench.setState({ person: (opened && personOf(opened.job, person)?.id) ?? person })
  leaveQuestion(true)
  const state = await ask('work-as', { name: opened === null ? person : personName(opened.job, person) })
  if (state !== undefined) takeBench(state)
}

/** Leaves the question unanswered: what waited for it is not done. */
export const cancelWho = (): void => leaveQuestion(false)

function leaveQuestion(isNamed: boolean): void {
  const those = waiting
  waiting = []
  useBench.setState({ asksWho: false })
  for (const tell of those) tell(isNamed)
}

/**
 * Who makes what is asked for now, and in which job; where nobody has said yet who is at work, that is asked first.
 * @returns null when they would not say it: nothing is to be done then
 */
export async function signed(): Promise<Signed | null> {
  const { person, opened } = useBench.getState()
  const job = opened === null ? {} : { job: opened.id }
  if (person !== '') return { by: person, ...job }
  askWho()
  const isNamed = await new Promise<boolean>((tell) => waiting.push(tell))
  return isNamed ? { by: useBench.getState().person, ...job } : null
}
