import './cell-editor.css'
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'
import type { AnyReason } from '../../core/words/reason.ts'
import { sentenceOf } from '../words/window-words.ts'

interface CellEditorProps {
  /** What is being changed, for those who hear the window. */
  label: string
  text: string
  /** Whether the keyboard goes into it at once. */
  takesKeyboard: boolean
  /** Whether what is wrong is said above the cell, where there is no room below it. */
  above: boolean
  /** Keeps the text, or says why it can't be kept. `byKey`: the keyboard stays where it is. */
  onKeep: (text: string, byKey: boolean) => AnyReason | null
  /** Gives up; what is in the job stays. */
  onGiveUp: () => void
}

const isUndo = ({ ctrlKey, metaKey, shiftKey, key }: KeyboardEvent): boolean =>
  (ctrlKey || metaKey) && !shiftKey && key.toLowerCase() === 'z'

/** A field in a cell. Enter keeps, Escape gives up, and leaving it keeps what can be kept. */
export function CellEditor({ label, text, takesKeyboard, above, onKeep, onGiveUp }: CellEditorProps) {
  const [draft, setDraft] = useState(text)
  const [wrong, setWrong] = useState('')
  const input = useRef<HTMLInputElement>(null)
  const over = useRef(false)
  const sentence = useId()

  // biome-ignore lint/correctness/useExhaustiveDependencies: only when it appears
  useEffect(() => {
    if (!takesKeyboard) return
    input.current?.focus()
    input.current?.select()
  }, [])

  const keep = (byKey: boolean) => {
    if (over.current) return
    // Before it is kept: the keyboard goes elsewhere with that, and leaving the field would keep it again.
    over.current = true
    const why = onKeep(draft, byKey)
    if (why === null) return
    over.current = false
    setWrong(sentenceOf(why))
  }
  const giveUp = () => {
    over.current = true
    onGiveUp()
  }
  return (
    <span className="cell-editor">
      <input
        ref={input}
        className="cell-editor-input"
        aria-label={label}
        aria-invalid={wrong !== ''}
        aria-describedby={wrong === '' ? undefined : sentence}
        value={draft}
        spellCheck={false}
        autoComplete="off"
        onChange={(event) => {
          setDraft(event.target.value)
          setWrong('')
        }}
        onBlur={() => keep(false)}
        onKeyDown={(event) => {
          event.stopPropagation()
          // With nothing written here, a browser's undo would go on to letters of the field that was left.
          if (draft === text && isUndo(event)) event.preventDefault()
          if (event.key === 'Enter') keep(true)
          if (event.key === 'Escape') giveUp()
        }}
      />
      <span className="cell-editor-wrong" role="alert" id={sentence} data-above={above || undefined}>
        {wrong}
      </span>
    </span>
  )
}
