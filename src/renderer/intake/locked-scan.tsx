import { useState } from 'react'
import type { ScanLook } from '../../contract/scan-look.ts'
import { theHost } from '../bench/the-host.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/text-field.tsx'
import { reason, sentenceOf } from '../words/window-words.ts'

interface LockedScanProps {
  look: ScanLook
  onLeave: () => void
  onOpened: (look: ScanLook, password: string) => void
}

/** Asks for what opens a scan. */
export function LockedScan({ look, onLeave, onOpened }: LockedScanProps) {
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState('')
  const [busy, setBusy] = useState(false)
  const open = async () => {
    if (password === '' || busy) return
    setBusy(true)
    const reply = await theHost().ask('look-into', { upload: look.upload, password })
    setBusy(false)
    if (!reply.ok) setWrong(reply.sentence)
    else if (reply.answer.locked) setWrong(sentenceOf(reason('intake.wrong-password')))
    else onOpened(reply.answer, password)
  }
  return (
    <form
      className="locked-scan"
      onSubmit={(event) => {
        event.preventDefault()
        void open()
      }}
    >
      <p>
        {look.name} opens with a password only. It is kept in memory while this program runs, and written
        nowhere.
      </p>
      <TextField
        label="Password"
        secret
        autoFocus
        value={password}
        onChange={(value) => {
          setPassword(value)
          setWrong('')
        }}
        error={wrong}
      />
      <div className="locked-scan-foot">
        <Button onPress={onLeave}>Cancel</Button>
        <Button kind="main" type="submit" disabled={password === '' || busy}>
          Open it
        </Button>
      </div>
    </form>
  )
}
