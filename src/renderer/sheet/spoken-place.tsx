import { useEffect, useState } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { VisuallyHidden } from '../parts/visually-hidden.tsx'
import { lastPickInWords, nextPickName, placeInWords } from '../picking/pick-names.ts'
import { pointer } from '../picking/pointer-store.ts'

/** Said only when nothing has moved for so long, ms. */
const QUIET = 350

/** Says where the cross is and what was picked, for those who do not see the sheet. */
export function SpokenPlace() {
  const [words, setWords] = useState('')
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const soon = (say: () => string): void => {
      clearTimeout(timer)
      timer = setTimeout(() => setWords(say()), QUIET)
    }
    const endPointer = pointer.subscribe(({ pixel, by, snapped, arrows }) => {
      if (by !== 'cross' || pixel === null || arrows === 'pick') return
      const near = snapped === null ? '' : `, mark ${snapped} will be taken`
      soon(() => `Cross at ${placeInWords(pixel)}${near}`)
    })
    const endBench = useBench.subscribe(({ picks }, before) => {
      if (picks === before.picks || picks.tool.kind === 'look') return
      soon(() => [lastPickInWords(picks), next(nextPickName(picks))].filter((part) => part !== '').join('. '))
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

const next = (name: string | null): string =>
  name === null ? 'All is picked' : `Next: ${name.toLowerCase()}`
