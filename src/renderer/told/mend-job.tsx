import { useEffect, useState } from 'react'
import type { Damage } from '../../contract/jobs.ts'
import { takeBench } from '../bench/store-sync.ts'
import { ask } from '../bench/the-host.ts'
import { signed } from '../bench/who-is-at-work.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'

/** A button that has a job mended whose files do not belong together, after it was said what it can go on from. */
export function MendJob({ job, title }: { job: string; title: string }) {
  const [asking, setAsking] = useState(false)
  return (
    <>
      <Button onPress={() => setAsking(true)} label={`Mend ${title}…`}>
        Mend…
      </Button>
      {asking && <MendDialog job={job} title={title} onClose={() => setAsking(false)} />}
    </>
  )
}

function MendDialog({ job, title, onClose }: { job: string; title: string; onClose: () => void }) {
  const [damage, setDamage] = useState<Damage | null>(null)
  const [busy, setBusy] = useState(false)
  useEffect(() => {
    let isWanted = true
    void ask('look-at-damage', { job }).then((found) => {
      if (isWanted && found !== undefined) setDamage(found)
    })
    return () => {
      isWanted = false
    }
  }, [job])
  const mend = async (from: string) => {
    setBusy(true)
    const who = await signed()
    const state = who === null ? undefined : await ask('mend', { job, from, by: who.by })
    setBusy(false)
    if (state === undefined) return
    onClose()
    takeBench(state)
  }
  return (
    <Dialog
      title={`Mend ${title}?`}
      open
      onClose={onClose}
      actions={<Button onPress={onClose}>Cancel</Button>}
    >
      {damage === null && <p>Looking at its files…</p>}
      {damage !== null && <p>{damage.trouble ?? 'Nothing is wrong with its files.'}</p>}
      {damage !== null && damage.trouble !== null && (
        <>
          <p>
            {damage.offers.length === 0
              ? 'None of them can be gone on from: put the right files back from a backup.'
              : 'It can go on from one of these. What its files were is kept in the folder “set-aside” of the job.'}
          </p>
          <ul className="mend-offers">
            {damage.offers.map(({ from, holds }) => (
              <li key={from}>
                <p>{holds}</p>
                <Button disabled={busy} onPress={() => void mend(from)} label={`Go on from this: ${holds}`}>
                  Go on from this
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
    </Dialog>
  )
}
