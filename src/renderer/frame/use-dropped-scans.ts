import { useEffect, useState } from 'react'
import { isWritingIn } from '../focus/leave-field.ts'

/**
 * Takes files that are dropped or pasted anywhere on the window.
 * @returns whether files are held over the window
 */
export function useDroppedScans(dropped: (files: File[]) => void): boolean {
  const [over, setOver] = useState(false)
  useEffect(() => {
    const brings = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true
    const dragged = (event: DragEvent): void => {
      if (!brings(event)) return
      event.preventDefault()
      setOver(true)
    }
    const left = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false)
    }
    const letGo = (event: DragEvent): void => {
      if (!brings(event)) return
      event.preventDefault()
      setOver(false)
      const files = [...(event.dataTransfer?.files ?? [])]
      if (files.length > 0) dropped(files)
    }
    const pasted = (event: ClipboardEvent): void => {
      const { files, types } = event.clipboardData ?? {}
      if (files === undefined || files.length === 0) return
      // What comes from a table or a text brings a picture of itself along; in a field the text is meant.
      if (isWritingIn(event.target) && types?.includes('text/plain') === true) return
      event.preventDefault()
      dropped([...files])
    }
    window.addEventListener('paste', pasted)
    window.addEventListener('dragover', dragged)
    window.addEventListener('dragleave', left)
    window.addEventListener('drop', letGo)
    return () => {
      window.removeEventListener('paste', pasted)
      window.removeEventListener('dragover', dragged)
      window.removeEventListener('dragleave', left)
      window.removeEventListener('drop', letGo)
    }
  }, [dropped])
  return over
}
