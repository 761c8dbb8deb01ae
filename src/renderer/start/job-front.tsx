import './job-front.css'
import { useState } from 'react'
import type { Glance } from '../../contract/jobs.ts'
import { theHost } from '../bench/the-host.ts'
import { Icon } from '../parts/icon.tsx'

/** The small picture of a job's first sheet; a folder until it is there, and where there is none. */
export function JobFront({ glance }: { glance: Glance | undefined }) {
  const [failed, setFailed] = useState<string | null>(null)
  const front = glance?.front ?? null
  return (
    <span className="job-front">
      {front === null || failed === front ? (
        <Icon name="folder" />
      ) : (
        <img src={theHost().pictureUrl(front)} alt="" onError={() => setFailed(front)} />
      )}
    </span>
  )
}
