import './person-menu.css'
import { personOf } from '../../core/job/edits/edit.ts'
import { useBench } from '../bench/bench-store.ts'
import { askWho, workAs } from '../bench/who-is-at-work.ts'
import { Button } from '../parts/button.tsx'
import { Menu } from '../parts/menu.tsx'

const OTHER = 'somebody else'

/** Who is at work: everything that is done from now on goes under this name. */
export function PersonMenu() {
  const job = useBench((bench) => bench.opened?.job)
  const person = useBench((bench) => bench.person)
  if (job === undefined) return null
  if (person === '')
    return (
      <div className="person-menu">
        <Button kind="quiet" icon="person" onPress={askWho}>
          Who is at work?
        </Button>
      </div>
    )
  const known = personOf(job, person)
  const options = [
    ...job.people.map((one) => ({ id: `person ${one.id}`, label: one.name })),
    ...(known === undefined ? [{ id: 'now', label: person }] : []),
    { id: OTHER, label: 'Somebody else…' },
  ]
  return (
    <div className="person-menu">
      <Menu
        label="At work"
        words={known?.name ?? person}
        icon="person"
        options={options}
        value={known === undefined ? 'now' : `person ${known.id}`}
        onChange={(id) => {
          if (id === OTHER) askWho()
          else if (id.startsWith('person ')) void workAs(id.slice('person '.length))
        }}
      />
    </div>
  )
}
