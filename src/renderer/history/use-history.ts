import { useEffect, useState } from 'react'
import type { ToldHistory } from '../../contract/history.ts'
import type { RequestArguments } from '../../contract/requests.ts'
import { useBench } from '../bench/bench-store.ts'
import { theHost } from '../bench/the-host.ts'

/** The thing that a history is of. */
export type HistoryOf = RequestArguments<'history'>['of']

/** What is known of the history of a thing: what was told last, or why it was not. */
interface Known {
  told: ToldHistory | null
  refused: string | null
}

const NOTHING_YET: Known = { told: null, refused: null }

/** Milliseconds between looks at what somebody else does meanwhile. */
const LOOK_EVERY = 4000

/** Goes on counting while a job is shown that somebody else writes to: no window is told of their edits one by one. */
function useTicks(isWanted: boolean): number {
  const isTheirs = useBench(({ opened }) => opened?.writable === false)
  const [ticks, setTicks] = useState(0)
  useEffect(() => {
    if (!isWanted || !isTheirs) return
    const timer = setInterval(() => setTicks((before) => before + 1), LOOK_EVERY)
    return () => clearInterval(timer)
  }, [isWanted, isTheirs])
  return ticks
}

/**
 * The history of a thing, the newest first, asked for again after every edit; until the answer is there the one before
 * stands.
 * @param limit how many entries at most; null: it is not asked for
 */
export function useHistory({ kind, id }: HistoryOf, limit: number | null): Known {
  const job = useBench((bench) => bench.opened?.id)
  const n = useBench((bench) => bench.opened?.n)
  const again = useTicks(limit !== null)
  const [known, setKnown] = useState({ ...NOTHING_YET, key: '' })
  const key = `${kind} ${id}`
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was told is no longer all once another edit was made.
  useEffect(() => {
    if (limit === null || job === undefined) return
    let wanted = true
    void theHost()
      .ask('history', { of: { kind, id }, limit, job })
      .then((reply) => {
        if (!wanted) return
        const told = reply.ok ? reply.answer : null
        setKnown({ key, told, refused: reply.ok ? null : reply.sentence })
      })
    return () => {
      wanted = false
    }
  }, [kind, id, limit, job, n, again])
  return known.key === key ? known : NOTHING_YET
}
