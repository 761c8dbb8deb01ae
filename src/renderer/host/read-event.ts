import { type HostEvent, hostEventSchema } from '../../contract/host-event.ts'
import type { Host } from './host.ts'

/** What a host tells, seen to be an event; null when it is none. */
export function readEvent(value: unknown): HostEvent | null {
  const read = hostEventSchema.safeParse(value)
  return read.success ? read.data : null
}

/** Hears what a host tells. After what can't be understood, how things stand is asked for and told instead. */
export function hearing(ask: Host['ask'], heard: (event: HostEvent) => void): (value: unknown) => void {
  return (value) => {
    const event = readEvent(value)
    if (event !== null) {
      heard(event)
      return
    }
    void ask('look', {}).then((reply) => {
      if (reply.ok) heard({ kind: 'bench', state: reply.answer })
    })
  }
}
