import { useState } from 'react'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/text-field.tsx'
import { sentenceOf } from '../words/window-words.ts'
import { pagesIn, rangesOf } from './page-ranges.ts'

interface PageToolsProps {
  /** How many there are. */
  pages: number
  chosen: ReadonlySet<number>
  /** Those that can be chosen. */
  all: readonly number[]
  onChoose: (pages: readonly number[]) => void
}

/** Chooses pages by their numbers, all of them or none. */
export function PageTools({ pages, chosen, all, onChoose }: PageToolsProps) {
  /** What is being written; null: the field shows what is chosen. */
  const [draft, setDraft] = useState<string | null>(null)
  const read = draft === null ? null : pagesIn(draft, pages)
  const write = (text: string) => {
    setDraft(text)
    const now = pagesIn(text, pages)
    if ('pages' in now) onChoose(now.pages.filter((page) => all.includes(page)))
  }
  const choose = (wanted: readonly number[]) => {
    setDraft(null)
    onChoose(wanted)
  }
  return (
    <div className="pages-tools">
      <TextField
        label="Pages"
        value={draft ?? rangesOf(chosen)}
        onChange={write}
        onBlur={() => setDraft(null)}
        placeholder="e.g. 1-3, 5"
        error={sentenceOf(read !== null && 'problem' in read ? read.problem : null)}
        autoFocus
      />
      <div className="pages-tools-all">
        <Button onPress={() => choose(all)}>All</Button>
        <Button onPress={() => choose([])}>None</Button>
        <span className="pages-count" aria-live="polite">
          {chosen.size} of {all.length} chosen
        </span>
      </div>
    </div>
  )
}
