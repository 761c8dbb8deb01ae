import './person-menu.css'
import { useState } from 'react'
import { personOf } from '../../core/job/edits/edit.ts'
import { useBench } from '../bench/bench-store.ts'
import { workAs } from '../bench/settings.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Menu } from '../parts/menu.tsx'
import { TextField } from '../parts/text-field.tsx'

const OTHER = 'somebody else'

/** Who is at work: everything that is done from now on goes under this name. */
export function PersonMenu() {
  const job = useBench((bench) => bench.opened?.job)
  const person = useBench((bench) => bench.person)
  const [asking, setAsking] = useState(false)
  const [name, setName] = useState('')
  if (job === undefined) return null
  const known = personOf(job, person)
  const options = [
    ...job.people.map((one) => ({ id: `person ${one.id}`, label: one.name })),
    ...(known === undefined ? [{ id: 'now', label: person }] : []),
    { id: OTHER, label: 'Somebody else…' },
  ]
  const close = () => setAsking(false)
  const take = () => {
    if (name.trim() === '') return
    workAs(name)
    close()
  }
  return (
    <div className="person-menu">
      <Menu
        label="At work"
        words={known?.name ?? person}
        icon="person"
        options={options}
        value={known === undefined ? 'now' : `person ${known.id}`}
        onChange={(id) => {
          if (id === OTHER) {
            setName('')
            setAsking(true)
          } else if (id.startsWith('person ')) workAs(id.slice('person '.length))
        }}
      />
      <Dialog
        title="Who is at work?"
        open={asking}
        onClose={close}
        actions={
          <>
            <Button onPress={close}>Cancel</Button>
            <Button kind="main" onPress={take} disabled={name.trim() === ''}>
              Work under this name
            </Button>
          </>
        }
      >
        <TextField
          label="Name"
          value={name}
          onChange={setName}
          onEnter={take}
          autoFocus
          note="Picks, readings and changes are kept under it from now on. It joins the people of the job with the first of them."
        />
      </Dialog>
    </div>
  )
}
