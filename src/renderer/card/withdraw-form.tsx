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
  onEnd: () => void
}

/** Asks why evidence no longer counts: without a reason it goes on counting. */
export function WithdrawForm({ dimension, id, label, onEnd }: WithdrawFormProps) {
  const [why, setWhy] = useState('')
  const [asked, setAsked] = useState(false)
  const withdraw = async () => {
    setAsked(true)
    if (why.trim() === '') return
    if (await makeEdit({ do: 'withdraw-evidence', dimension, id, why: why.trim() })) onEnd()
  }
  return (
    <>
      <TextField
        label={`Why ${label} no longer counts`}
        value={why}
        onChange={setWhy}
        autoFocus
        error={sentenceOf(asked && why.trim() === '' ? reason('written.no-cause') : null)}
        onEnter={() => void withdraw()}
        onEscape={onEnd}
      />
      <div className="dimension-card-actions">
        <Button onPress={() => void withdraw()}>Withdraw it</Button>
        <Button onPress={onEnd}>Keep it</Button>
      </div>
    </>
  )
}
