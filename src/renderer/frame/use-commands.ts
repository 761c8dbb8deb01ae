import { useEffect } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { goTo } from '../bench/choose.ts'
import { onCommand } from '../bench/commands.ts'
import { redo, undo } from '../bench/edits.ts'
import { takeBench } from '../bench/store-sync.ts'
import { ask } from '../bench/the-host.ts'
import { leaveField } from '../focus/leave-field.ts'
import { askForScans } from '../parts/ask-for-scans.ts'

/** Closes the job; everything in it is on disk already. */
export async function closeJob(): Promise<void> {
  leaveField()
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
        if (command === 'undo' && opened.writable && opened.undoName !== undefined) void undo()
        if (command === 'redo' && opened.writable && opened.redoName !== undefined) void redo()
      }),
    [],
  )
}
