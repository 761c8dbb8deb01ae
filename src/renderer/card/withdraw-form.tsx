import { useState } from 'react'
import { makeEdit } from '../bench/edits.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/text-field.tsx'
import { reason, sentenceOf } from '../words/window-words.ts'

interface WithdrawFormProps {
  dimension: string
  id: string
  /** What people call it. */
  label: string
  /** False: what was written stays to be read and copied. */
  writable: boolean
  onEnd: () => void
}

/** Asks why evidence no longer counts: without a reason it goes on counting. */
export function WithdrawForm({ dimension, id, label, writable, onEnd }: WithdrawFormProps) {
  const [why, setWhy] = useState('')
  const [asked, setAsked] = useState(false)
  if (!writable && why.trim() === '') return null
  const withdraw = async () => {
    setAsked(true)
    if (why.trim() === '' || !writable) return
    if (await makeEdit({ do: 'withdraw-evidence', dimension, id, why: why.trim() })) onEnd()
  }
  return (
    <>
      <TextField
        label={`Why ${label} no longer counts`}
        value={why}
        onChange={setWhy}
        autoFocus
        fixed={!writable}
        error={sentenceOf(
          !writable
            ? reason('written.only-looking')
            : asked && why.trim() === ''
              ? reason('written.no-cause')
              : null,
        )}
        onEnter={() => void withdraw()}
        onEscape={onEnd}
      />
      <div className="dimension-card-actions">
        <Button disabled={!writable} onPress={() => void withdraw()}>
          Withdraw it
        </Button>
        <Button onPress={onEnd}>Cancel</Button>
      </div>
    </>
  )
}
