import type { HostEvent } from '../../contract/host-event.ts'
import type { Reply } from '../../contract/reply.ts'
import type { RequestArguments, RequestName } from '../../contract/requests.ts'

/** What a window has of its host, whichever host it is. What comes from it was read: it has the form that it says. */
export interface Host {
  ask<N extends RequestName>(name: N, args: RequestArguments<N>): Promise<Reply<N>>
  /** Calls back at every event; the function that comes back ends that. */
  listen(heard: (event: HostEvent) => void): () => void
  /** Where a picture is fetched from; `address` as `pictureAddress` gives it. */
  pictureUrl(address: string): string
  /**
   * Hands the bytes of a scan over.
   * @param progressed called with the share that is over, 0 to 1
   * @returns the id by which requests name it
   * @throws ScantlingError with the reason and its sentence when the host refuses it or is gone; a DOMException named
   *   AbortError when `signal` ended it
   */
  sendScan(file: File, progressed: (share: number) => void, signal: AbortSignal): Promise<string>
}
