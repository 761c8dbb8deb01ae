import { Button } from '../../parts/button.tsx'

interface RemoveProps {
  /** Words on the button. */
  words: string
  writable: boolean
  /** Why it can't be removed, in a sentence; null when it can. */
  because: string | null
  onRemove: () => void
}

/** Takes something out of the job, or says why that can't be. */
export function Remove({ words, writable, because, onRemove }: RemoveProps) {
  return (
    <>
      <div className="desk-row">
        <Button icon="bin" kind="danger" disabled={!writable || because !== null} onPress={onRemove}>
          {words}
        </Button>
      </div>
      {because !== null && <p className="desk-soft">{because}</p>}
    </>
  )
}
