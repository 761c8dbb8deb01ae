import { useEffect, useState } from 'react'
import type { Glance, ListedJob, ListedJobs } from '../../contract/jobs.ts'
import { useBench } from '../bench/bench-store.ts'
import { ask, theHost } from '../bench/the-host.ts'

export interface JobsSeen {
  shelf: string
  jobs: readonly ListedJob[]
  /** How each stands, as far as it was looked at. */
  glances: ReadonlyMap<string, Glance>
}

/** The jobs that can be opened; how each stands is looked at one by one. Null until the host has told them. */
export function useJobs(): JobsSeen | null {
  const listed = useListedJobs()
  const glances = useGlances(listed?.jobs.filter(({ isGone }) => isGone !== true).map(({ id }) => id))
  return listed === null ? null : { ...listed, glances }
}

/** The jobs that can be opened, and where new ones are made. Null until the host has told them. */
export function useListedJobs(): ListedJobs | null {
  const recent = useBench((bench) => bench.host?.recent)
  const [listed, setListed] = useState<ListedJobs | null>(null)
  useEffect(() => {
    let isWanted = recent !== undefined
    void ask('jobs', {}).then((jobs) => {
      if (isWanted && jobs !== undefined) setListed(jobs)
    })
    return () => {
      isWanted = false
    }
  }, [recent])
  return listed
}

/** How jobs stand, one looked at after the other, each once as long as it is shown. */
export function useGlances(jobs: readonly string[] | undefined): ReadonlyMap<string, Glance> {
  const [glances, setGlances] = useState<ReadonlyMap<string, Glance>>(new Map())
  const wanted = jobs?.join(' ')
  useEffect(() => {
    let isWanted = true
    const lookAtAll = async (): Promise<void> => {
      for (const job of wanted === undefined || wanted === '' ? [] : wanted.split(' ')) {
        if (!isWanted) return
        const reply = await theHost().ask('glance', { job })
        // What can't be looked at is shown without; why, is said when it is opened.
        if (reply.ok && isWanted) setGlances((before) => new Map(before).set(job, reply.answer))
      }
    }
    void lookAtAll()
    return () => {
      isWanted = false
    }
  }, [wanted])
  return glances
}
