import { useEffect, useState } from 'react'
import type { Edit } from '../../core/job/edits/edit.ts'
import type { PicksRefused } from '../../core/job/from-picks/picked-mark.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { theComputer } from '../bench/store-sync.ts'
import type { Trial } from '../findings/computer.ts'

/**
 * What a dimension would come to after the edit that picks come to; the last answer stays, in its unit, while a newer one
 * is worked out.
 */
export function useTrial(
  job: Job,
  made: { edit: Edit } | PicksRefused,
  dimension: string,
  unit: Unit,
): Trial | null {
  const [trial, setTrial] = useState<Trial | null>(null)
  const figuresAs = useBench((bench) => bench.figuresAs)
  const asked = JSON.stringify(made)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the edit is made anew at every drawing, its content counts
  useEffect(() => {
    if ('refused' in made) return
    let wanted = true
    void theComputer()
      .trial(job, made.edit, dimension, { unit, figuresAs })
      .then((answer) => {
        if (wanted) setTrial(answer)
      })
    return () => {
      wanted = false
    }
  }, [job, asked, dimension, unit, figuresAs])
  return 'refused' in made ? { row: null, unit, because: made.refused } : trial
}
