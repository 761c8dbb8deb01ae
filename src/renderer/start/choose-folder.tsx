import './choose-folder.css'
import { useEffect, useRef, useState } from 'react'
import { Button as AriaButton } from 'react-aria-components'
import type { FoldersSeen, Glance } from '../../contract/jobs.ts'
import { ask } from '../bench/the-host.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Icon } from '../parts/icon.tsx'
import { JobFront } from './job-front.tsx'
import { openWith } from './open-with.ts'
import { standingInWords } from './standing-words.ts'
import { useGlances } from './use-jobs.ts'

/** Chooses a job folder below the home folder: what is in each is shown by its name, and jobs by their first sheet. */
export function ChooseFolder({ onClose }: { onClose: () => void }) {
  const [seen, setSeen] = useState<FoldersSeen | null>(null)
  const [busy, setBusy] = useState(false)
  const glances = useGlances(seen?.folders.filter(({ isJob }) => isJob).map(({ id }) => id))
  const list = useRef<HTMLUListElement>(null)
  const [entered, setEntered] = useState(0)
  const look = async (folder?: string) => {
    if (busy) return
    setBusy(true)
    const found = await ask('look-in-folder', folder === undefined ? {} : { folder })
    setBusy(false)
    if (found === undefined) return
    setSeen(found)
    if (folder !== undefined) setEntered((times) => times + 1)
  }
  // What was pressed is gone with the folder that it was in: else the keyboard would be nowhere, and Esc close nothing.
  useEffect(() => {
    if (entered > 0) list.current?.focus()
  }, [entered])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the home folder is looked into once, at the start
  useEffect(() => void look(), [])
  const open = async (job: string) => {
    if (busy) return
    setBusy(true)
    const isOpen = await openWith('open-recent', { recent: job }).finally(() => setBusy(false))
    if (isOpen) onClose()
  }
  const up = seen?.up ?? null
  return (
    <Dialog
      title="Open a job folder"
      open
      wide
      onClose={onClose}
      actions={<Button onPress={onClose}>Cancel</Button>}
    >
      <div className="choose-folder-head">
        <Button
          icon="back"
          disabled={up === null}
          onPress={() => {
            if (up !== null) void look(up)
          }}
        >
          Up
        </Button>
        <span className="choose-folder-place" role="status">
          {seen?.place ?? ''}
        </span>
      </div>
      {seen !== null && seen.folders.length === 0 && <p>There is no folder in it.</p>}
      <ul
        ref={list}
        className="choose-folder-list"
        aria-label={`Folders in ${seen?.place ?? ''}`}
        tabIndex={-1}
      >
        {seen?.folders.map(({ id, name, isJob }) => (
          <li key={id}>
            <AriaButton className="choose-folder-one" onPress={() => void (isJob ? open(id) : look(id))}>
              {isJob ? <AJob name={name} glance={glances.get(id)} /> : <AFolder name={name} />}
            </AriaButton>
          </li>
        ))}
      </ul>
      {seen !== null && seen.more > 0 && (
        <p>{seen.more} more are not shown: put the job into a folder with fewer beside it.</p>
      )}
    </Dialog>
  )
}

function AFolder({ name }: { name: string }) {
  return (
    <>
      <Icon name="folder" />
      <span className="choose-folder-name">{name}</span>
      <Icon name="right" />
    </>
  )
}

function AJob({ name, glance }: { name: string; glance: Glance | undefined }) {
  return (
    <>
      <JobFront glance={glance} />
      <span className="choose-folder-name">
        <b>{glance?.title ?? name}</b>
        <span className="choose-folder-soft">
          Job in {name}
          {glance === undefined ? '' : `. ${standingInWords(glance)}`}
        </span>
      </span>
    </>
  )
}
