import { readFile, stat } from 'node:fs/promises'
import { replaceFile } from '../../files/replace-file.ts'
import { systemCode } from '../../files/system-reason.ts'
import { ChangedByAnother } from './history-file.ts'
import { sha256 } from './line-text.ts'

/** What tells one written state of a file from another, without reading it. */
export type FileStamp = string

/** Identity of the present content of a file, without reading it. */
export async function fileStamp(path: string): Promise<FileStamp> {
  const { dev, ino, size, mtimeNs } = await stat(path, { bigint: true })
  return `${dev}:${ino}:${size}:${mtimeNs}`
}

/** The job.json of an open job: written by this session only, and only over what it read or wrote itself. */
export class JobFile {
  readonly path: string
  #stamp: FileStamp
  #hash: string

  /** bytes: what was read, at that stamp. */
  constructor(path: string, stamp: FileStamp, bytes: Uint8Array) {
    this.path = path
    this.#stamp = stamp
    this.#hash = sha256(bytes)
  }

  /**
   * Sees that it still is what this session read or wrote.
   * @throws ChangedByAnother
   */
  async mustBeOurs(): Promise<void> {
    try {
      const stamp = await fileStamp(this.path)
      if (stamp === this.#stamp) return
      // Touched, or put back as it was: that is no change.
      if (sha256(await readFile(this.path)) !== this.#hash) throw new ChangedByAnother('job')
      this.#stamp = stamp
    } catch (error) {
      if (systemCode(error) === 'ENOENT') throw new ChangedByAnother('job')
      throw error
    }
  }

  async write(text: string): Promise<void> {
    await replaceFile(this.path, text)
    this.#hash = sha256(text)
    this.#stamp = await fileStamp(this.path)
  }
}
