import type { MessageBridge } from '../../contract/message-bridge.ts'

/** What a window has of its host, whichever host it is. */
export interface Host extends MessageBridge {
  /** Where a picture is fetched from; `address` as `pictureAddress` gives it. */
  pictureUrl(address: string): string
  /**
   * Hands the bytes of a scan over.
   * @param progressed called with the share that is over, 0 to 1
   * @returns the id by which other asks name it
   * @throws Error with a sentence when the host refuses it or is gone; a DOMException named AbortError when `signal`
   *   ended it
   */
  sendScan(file: File, progressed: (share: number) => void, signal: AbortSignal): Promise<string>
}
