import './cell-editor.css'
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react'
import type { AnyReason } from '../../core/words/reason.ts'
import { inWords, reason, sentenceOf } from '../words/window-words.ts'
import { CellSaid } from './cell-said.tsx'

/** How a cell is left: by Enter, along the row by Tab, back along it, or by going elsewhere. */
export type CellLeft = 'down' | 'along' | 'back' | 'elsewhere'

interface CellEditorProps {
  /** What is being changed, for those who hear the window. */
  label: string
  text: string
  /** What is written so far, and what the job had when that was begun; kept up to date here. */
  writing: { draft: string; seen: string }
  /** What the job has there by now: another text than at first where it was changed elsewhere meanwhile. */
  now: string
  /** Whether the keyboard goes into it at once. */
  takesKeyboard: boolean
  /** What a text comes to, said while it is written; nothing for a text that needs none. */
  verdict?: ((text: string) => ReactNode) | undefined
  /** Keeps the text, or says why it can't be kept. */
  onKeep: (text: string, left: CellLeft) => AnyReason | null
  /** Gives up; what is in the job stays. */
  onGiveUp: () => void
  /** Whether there is a cell along the row, or back along it, that Tab goes to. */
  goesOn: (left: CellLeft) => boolean
}

const isUndo = ({ ctrlKey, metaKey, shiftKey, key }: KeyboardEvent): boolean =>
  (ctrlKey || metaKey) && !shiftKey && key.toLowerCase() === 'z'

/** A field in a cell. Enter and Tab keep, Escape gives up, and leaving it keeps what can be kept. */
export function CellEditor(props: CellEditorProps) {
  const { label, text, writing, now, takesKeyboard, verdict, onKeep, onGiveUp, goesOn } = props
  const [draft, setDraft] = useState(writing.draft)
  const [wrong, setWrong] = useState('')
  const input = useRef<HTMLInputElement>(null)
  const over = useRef(false)
  const sentence = useId()
  /** What the job had when it was last looked at here. */
  const [seen, setSeen] = useState(writing.seen)
  const isElsewhere = now !== seen && draft.trim() !== now
  // With nothing written here yet, it goes on following the job.
  if (now !== seen && draft === seen) {
    setSeen(now)
    setDraft(now)
  }
  const said = isElsewhere ? inWords(reason('written.changed-elsewhere', { now })) : wrong

  // biome-ignore lint/correctness/useExhaustiveDependencies: only when it appears
  useEffect(() => {
    if (!takesKeyboard) return
    input.current?.focus()
    if (draft === text) input.current?.select()
    else input.current?.setSelectionRange(draft.length, draft.length)
  }, [])

  const keep = (left: CellLeft) => {
    // What somebody else wrote meanwhile is not written over by leaving the field.
    if (over.current || (isElsewhere && left === 'elsewhere')) return
    // Before it is kept: the keyboard goes elsewhere with that, and leaving the field would keep it again.
    over.current = true
    const why = onKeep(draft, left)
    if (why === null) return
    over.current = false
    setWrong(sentenceOf(why))
  }
  const giveUp = () => {
    over.current = true
    onGiveUp()
  }
  const comesTo = draft === text ? null : verdict?.(draft)
  return (
    <span className="cell-editor">
      <input
        ref={input}
        className="cell-editor-input"
        aria-label={label}
        aria-invalid={said !== ''}
        aria-describedby={said === '' ? undefined : sentence}
        value={draft}
        spellCheck={false}
        autoComplete="off"
        onChange={(event) => {
          writing.draft = event.target.value
          setDraft(event.target.value)
          setWrong('')
        }}
        onBlur={() => keep('elsewhere')}
        onKeyDown={(event) => {
          event.stopPropagation()
          // With nothing written here, a browser's undo would go on to letters of the field that was left.
          if (draft === text && isUndo(event)) event.preventDefault()
          if (event.key === 'Enter') keep('down')
          if (event.key === 'Escape') giveUp()
          const tab = event.shiftKey ? 'back' : 'along'
          if (event.key === 'Tab' && goesOn(tab)) {
            event.preventDefault()
            keep(tab)
          }
        }}
      />
      <CellSaid of={input}>
        <p className="cell-editor-wrong" role="alert" id={sentence}>
          {said}
        </p>
        {said === '' && comesTo}
      </CellSaid>
    </span>
  )
}
