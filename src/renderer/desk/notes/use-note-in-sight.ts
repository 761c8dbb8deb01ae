import { useEffect } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { bringInSight } from '../../sheet/look-at.ts'

/** Brings the region of a note that is chosen into sight. */
export function useNoteInSight(): void {
  const note = useBench(({ selection }) => (selection?.kind === 'note' ? selection.id : null))
  const sheet = useBench((bench) => bench.sheet)
  useEffect(() => {
    const chosen = useBench.getState().opened?.job.notes.find(({ id }) => id === note)
    if (chosen !== undefined && chosen.sheet === sheet) bringInSight(chosen.outline)
  }, [note, sheet])
}
