import { useEffect, useState } from 'react'
import type { Mark } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { VisuallyHidden } from '../parts/visually-hidden.tsx'
import { lastPickInWords, markCalled, nextPickName, placeInWords } from '../picking/pick-names.ts'
import { pointer } from '../picking/pointer-store.ts'

/** Said only when nothing has moved for so long, ms. */
const QUIET = 350

/** Says where the cross is and what was picked, for those who do not see the sheet. */
export function SpokenPlace() {
  const [words, setWords] = useState('')
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    // A search may answer a pick when the cross has gone on already: neither keeps the other from being said.
    let waiting: { picks?: () => string; cross?: () => string } = {}
    const soon = (what: typeof waiting): void => {
      waiting = { ...waiting, ...what }
      clearTimeout(timer)
      timer = setTimeout(() => {
        setWords(sentences(waiting.picks?.(), waiting.cross?.()))
        waiting = {}
      }, QUIET)
    }
    const endPointer = pointer.subscribe(({ pixel, by, near, arrows }) => {
      if (by !== 'cross' || pixel === null || arrows === 'pick') return
      const old = near === null ? '' : `, ${markCalled(near, marksOfJob())} is there: Shift and P takes it`
      soon({ cross: () => `Cross at ${placeInWords(pixel)}${old}` })
    })
    const endBench = useBench.subscribe(({ picks }, before) => {
      if (picks === before.picks || picks.tool.kind === 'look') return
      soon({ picks: () => sentences(lastPickInWords(picks, marksOfJob()), next(nextPickName(picks))) })
    })
    return () => {
      clearTimeout(timer)
      endPointer()
      endBench()
    }
  }, [])
  return (
    <div role="status">
      <VisuallyHidden>{words}</VisuallyHidden>
    </div>
  )
}

const marksOfJob = (): readonly Mark[] => useBench.getState().opened?.job.marks ?? []

const sentences = (...parts: (string | undefined)[]): string => parts.filter(Boolean).join('. ')

const next = (name: string | null): string =>
  name === null ? 'All is picked' : `Next: ${name.toLowerCase()}`
