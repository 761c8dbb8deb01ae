import { stat, statfs } from 'node:fs/promises'

/**
 * File systems, by their magic number (statfs(2)), that lie on a disk of one machine only and give each folder a number
 * that stays with it. Network shares and FUSE may number the same folder otherwise for each machine, each mount or
 * each time; FAT numbers it anew whenever it is read; an overlay may when it is changed.
 */
const LASTING: ReadonlySet<number> = new Set([
  0xef53, // ext2, ext3, ext4
  0x58465342, // XFS
  0x9123683e, // btrfs
  0xf2f52010, // F2FS
  0x2fc12fc1, // ZFS
  0xca451a4e, // bcachefs
  0x3153464a, // JFS
  0x7366746e, // NTFS
  0x01021994, // tmpfs
])

/**
 * Device and inode of a folder on a disk of this machine's own: another folder that is there at the same time, under
 * the same kernel, has others. They stay when it is renamed, and a copy of it has others.
 * @returns undefined where the system or the file system promises no such thing
 */
export async function folderNumbers(folder: string): Promise<string | undefined> {
  if (process.platform !== 'linux') return undefined
  try {
    const { type } = await statfs(folder)
    if (!LASTING.has(type >>> 0)) return undefined
    const { dev, ino } = await stat(folder, { bigint: true })
    return `${dev}:${ino}`
  } catch {
    return undefined
  }
}
