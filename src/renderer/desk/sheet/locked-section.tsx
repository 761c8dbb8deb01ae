import { useState } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { unlock } from '../../bench/unlock.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { TextField } from '../../parts/text-field.tsx'

/** The field for the password of a sheet whose scan is locked; nothing while it is not. */
export function LockedSection({ sheet }: { sheet: string }) {
  const locked = useBench(({ pictures }) => pictures[sheet]?.progress.locked === true)
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState('')
  const [busy, setBusy] = useState(false)
  if (!locked) return null
  const open = async () => {
    if (password === '' || busy) return
    setBusy(true)
    setWrong(await unlock(sheet, password))
    setBusy(false)
  }
  return (
    <Section title="This scan is locked">
      <form
        className="block-words"
        onSubmit={(event) => {
          event.preventDefault()
          void open()
        }}
      >
        <p>
          It is shown once it is opened. The password is kept in memory only, and asked for at each start.
        </p>
        <TextField
          label="Password"
          secret
          value={password}
          onChange={(value) => {
            setPassword(value)
            setWrong('')
          }}
          error={wrong}
        />
        <div className="block-row">
          <Button kind="main" type="submit" disabled={password === '' || busy}>
            Open it
          </Button>
        </div>
      </form>
    </Section>
  )
}
