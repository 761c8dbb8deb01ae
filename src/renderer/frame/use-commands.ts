import { useEffect } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { goTo } from '../bench/choose.ts'
import { onCommand } from '../bench/commands.ts'
import { redo, undo } from '../bench/edits.ts'
import { isAllKept } from '../bench/in-turn.ts'
import { tell } from '../bench/notices.ts'
import { takeBench } from '../bench/store-sync.ts'
import { ask } from '../bench/the-host.ts'
import { leaveField } from '../focus/leave-field.ts'
import { askForScans } from '../parts/ask-for-scans.ts'
import { isAnyUnkept } from '../parts/unkept.ts'
import { inWords, reason } from '../words/window-words.ts'

/** The job that somebody was told of that not all is kept of what was written for it. */
let told: string | undefined

/**
 * Closes the job, once all that was entered is on disk. Where something written is not kept it stays open the first time
 * that is asked, and the person is told.
 */
export async function closeJob(): Promise<void> {
  leaveField()
  const kept = (await isAllKept()) && !isAnyUnkept()
  const id = useBench.getState().opened?.id
  if (!kept && told !== id) {
    told = id
    tell('caution', inWords(reason('edit.close-loses')))
    return
  }
  told = undefined
  const state = await ask('close-job', {})
  if (state !== undefined) takeBench(state)
}

/** Carries out what the host's own menu asks for; the sheet sees to looking closer and from further off. */
export function useCommands(): void {
  useEffect(
    () =>
      onCommand((command) => {
        const { opened } = useBench.getState()
        if (command === 'bring-in-scan') {
          leaveField()
          if (opened !== null) goTo('sheet')
          requestAnimationFrame(askForScans)
          return
        }
        if (opened === null) return
        if (command === 'close-job') void closeJob()
        if (command === 'undo' && opened.writable) void undo()
        if (command === 'redo' && opened.writable) void redo()
      }),
    [],
  )
}
