import type { AnyReason } from '../../../core/words/reason.ts'
import { Button } from '../../parts/button.tsx'
import { inWords } from '../../words/window-words.ts'

interface RemoveProps {
  /** Words on the button. */
  words: string
  writable: boolean
  /** Why it can't be removed; null when it can. */
  because: AnyReason | null
  onRemove: () => void
}

/** Takes something out of the job, or says why that can't be. */
export function Remove({ words, writable, because, onRemove }: RemoveProps) {
  return (
    <>
      <div className="block-row">
        <Button icon="bin" kind="danger" disabled={!writable || because !== null} onPress={onRemove}>
          {words}
        </Button>
      </div>
      {because !== null && <p className="block-soft">{inWords(because)}</p>}
    </>
  )
}
