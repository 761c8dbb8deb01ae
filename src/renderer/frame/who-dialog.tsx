import './person-menu.css'
import { useState } from 'react'
import { Group } from 'react-aria-components'
import type { Person } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { cancelWho, workAs } from '../bench/who-is-at-work.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { TextField } from '../parts/text-field.tsx'

const NOBODY: readonly Person[] = []

/** Asks who is at work: when somebody else takes over, and before the first change where nobody has said it. */
export function WhoDialog() {
  const asks = useBench((bench) => bench.asksWho)
  return asks ? <Question /> : null
}

function Question() {
  const people = useBench((bench) => bench.opened?.job.people ?? NOBODY)
  const isWanted = useBench((bench) => bench.keeping > 0)
  const [name, setName] = useState('')
  const [asked, setAsked] = useState(false)
  const take = () => {
    if (name.trim() === '') setAsked(true)
    else void workAs(name)
  }
  return (
    <Dialog
      title="Who is at work?"
      open
      onClose={cancelWho}
      actions={
        <>
          <Button onPress={cancelWho}>Cancel</Button>
          <Button kind="main" onPress={take}>
            Work under this name
          </Button>
        </>
      }
    >
      {isWanted && <p>Your change is kept under a name, so that others see whose it is.</p>}
      {people.length > 0 && (
        <Group className="who-people" aria-label="People of this job">
          {people.map(({ id, name: known }) => (
            <Button key={id} icon="person" onPress={() => void workAs(id)}>
              {known}
            </Button>
          ))}
        </Group>
      )}
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        onEnter={take}
        autoFocus
        error={
          asked && name.trim() === '' ? 'Write a name, or choose one of the people of this job.' : undefined
        }
        note="Picks, readings and changes are kept under it from now on, in every job, until it is changed here. It joins the people of the job with the first of them."
      />
    </Dialog>
  )
}
