import './open-job.css'
import { useState } from 'react'
import { Button as AriaButton } from 'react-aria-components'
import type { Glance, ListedJob } from '../../contract/jobs.ts'
import { useBench } from '../bench/bench-store.ts'
import { ask } from '../bench/the-host.ts'
import { Button } from '../parts/button.tsx'
import { MendJob } from '../told/mend-job.tsx'
import { ChooseFolder } from './choose-folder.tsx'
import { JobFront } from './job-front.tsx'
import { openWith } from './open-with.ts'
import { standingInWords } from './standing-words.ts'
import { useJobs } from './use-jobs.ts'

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' })

/** Opens a job that is there already. */
export function OpenJob() {
  const seen = useJobs()
  const chooses = useBench((bench) => bench.host?.choosesFolders === true)
  const [busy, setBusy] = useState(false)
  const [choosing, setChoosing] = useState(false)
  const open = async (how: Promise<boolean>) => {
    setBusy(true)
    await how.finally(() => setBusy(false))
  }
  const choose = () => {
    if (chooses) void open(openWith('choose-job', {}))
    else setChoosing(true)
  }
  return (
    <section className="start-way" aria-label="Go on with a job">
      <h2 className="start-way-title">Go on with a job</h2>
      <div>
        <Button icon="folder" disabled={busy} onPress={choose}>
          Open a job folder…
        </Button>
      </div>
      {seen !== null && seen.jobs.length === 0 && (
        <p>
          A job is a folder with its scans and all that is known about them. Those in {seen.shelf}, and recent
          jobs, appear here.
        </p>
      )}
      {seen !== null && seen.jobs.length > 0 && (
        <ul className="open-job-list" aria-label="Jobs">
          {seen.jobs.map((job) => (
            <li key={job.id}>
              {job.isGone === true ? (
                <GoneJob
                  job={job}
                  busy={busy}
                  onLook={() => void open(openWith('open-recent', { recent: job.id }))}
                  onChoose={choose}
                />
              ) : seen.glances.get(job.id)?.problem !== undefined ? (
                <div className="open-job-one">
                  <span className="open-job-mend">
                    <MendJob job={job.id} title={job.title} />
                  </span>
                  <JobWords job={job} glance={seen.glances.get(job.id)} />
                </div>
              ) : (
                <AriaButton
                  className="open-job-one"
                  isDisabled={busy}
                  onPress={() => void open(openWith('open-recent', { recent: job.id }))}
                >
                  <JobFront glance={seen.glances.get(job.id)} />
                  <JobWords job={job} glance={seen.glances.get(job.id)} />
                </AriaButton>
              )}
            </li>
          ))}
        </ul>
      )}
      {choosing && <ChooseFolder onClose={() => setChoosing(false)} />}
    </section>
  )
}

/** What is told of a job, on as many lines before it was looked at as after: rows that are pressed must not move. */
function JobWords({ job, glance }: { job: ListedJob; glance: Glance | undefined }) {
  const { title, place, openedAt } = job
  const named = glance?.title ?? title
  const standing = glance === undefined ? '' : standingInWords(glance)
  return (
    <span className="open-job-words">
      <span className="open-job-title" title={named}>
        {named}
      </span>
      <span className="open-job-place" title={place}>
        {place}
      </span>
      {openedAt !== undefined && (
        <span className="open-job-place">Last open {day.format(new Date(openedAt))}</span>
      )}
      <span
        className="open-job-standing"
        data-wrong={glance?.problem !== undefined || undefined}
        title={standing}
      >
        {standing}
      </span>
    </span>
  )
}

interface GoneJobProps {
  job: ListedJob
  busy: boolean
  onLook: () => void
  onChoose: () => void
}

/** A job that is not where it was: it is looked for, or shown, or taken off the list. */
function GoneJob({ job: { id, title, place }, busy, onLook, onChoose }: GoneJobProps) {
  return (
    <div className="open-job-gone">
      <span className="open-job-title" title={title}>
        {title}
      </span>
      <span className="open-job-problem">It is no longer in {place}.</span>
      <span className="open-job-ways">
        <Button disabled={busy} onPress={onLook} label={`Look for ${title}`}>
          Look for it
        </Button>
        <Button disabled={busy} onPress={onChoose} label={`Where is ${title}?`}>
          Where is it?
        </Button>
        <Button
          kind="quiet"
          disabled={busy}
          label={`Take ${title} off the list`}
          onPress={() => void ask('forget-job', { job: id })}
        >
          Take off the list
        </Button>
      </span>
    </div>
  )
}
